import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<of>', 'the field sample, or the part of one'],
    ['<code>', 'the code of this part'],
    ['[words...]', 'which part: upper layer, tray 2'],
  ],
  options: command =>
    command
      .option('--share <n>', 'what share of the whole, such as 0.25', numberWord)
      .option('--host <text>', 'host plant or animal, where it is not that of the whole')
      .option('--host-part <text>', 'leaf, stem, root, nest …')
      .option('--substrate <text>')
      .option('--note <text>'),
  examples: ['subsample 26-015 26-015.1 upper layer --share 0.5'],
  record: ([of, code, ...words], {share, host, hostPart, substrate, note}) => ({
    record: 'subsample',
    code,
    of,
    part: words.length === 0 ? undefined : words.join(' '),
    share,
    host,
    hostPart,
    substrate,
    note,
  }),
});
