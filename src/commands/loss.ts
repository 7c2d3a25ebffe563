import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<count>', 'animals lost'],
  ],
  options: command =>
    command
      .option('--stage <stage>', 'their stage')
      .requiredOption('--cause <word>', 'dead, escaped, eaten, missing, given or other')
      .option('--note <text>'),
  examples: ['loss 26-031-A 1 --stage larva-5 --cause dead'],
  record: ([lot, count], {stage, cause, note}) => ({
    record: 'loss',
    lot,
    count: numberWord(count ?? ''),
    stage,
    cause,
    note,
  }),
});
