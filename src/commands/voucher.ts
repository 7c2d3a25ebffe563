import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<code>', 'the lot; with --of-sample the field sample it was taken out of dead'],
    ['[stage]', 'the stage of the animal preserved'],
  ],
  options: command =>
    command
      .option('--count <n>', 'how many', numberWord, 1)
      .option('--of-sample', 'straight out of a field sample, adults too')
      .option('--taxon <text>', 'what it is, as known now')
      .option('--sex <word>', 'female, male or unknown')
      .option('--together', 'several in one vial, under one code')
      .option('--code <specimen>', 'its specimen code (default: LOT-v1 …)'),
  examples: [
    'voucher 26-031-A larva-5',
    'voucher 26-015 adult --of-sample --count 12 --together --taxon Carabidae',
  ],
  record: ([origin, stage], {count, code, ofSample, taxon, sex, together}) => ({
    record: 'voucher',
    [ofSample === true ? 'sample' : 'lot']: origin,
    stage,
    count,
    taxon,
    sex,
    together,
    specimen: code,
  }),
});
