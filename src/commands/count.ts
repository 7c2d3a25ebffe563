import {recordCommand} from './recording.ts';
import {stageWords} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<stage=n...>', 'animals seen by stage'],
  ],
  options: command =>
    command
      .option('--complete', 'all animals were looked at (default: when the total is the number alive)')
      .option('--part', 'only a part was looked at'),
  examples: ['count 26-031-A larva-5=15 pupa=8'],
  record: ([lot, ...counts], {complete, part}) => ({
    record: 'count',
    lot,
    stages: stageWords(counts),
    complete: complete === true ? true : part === true ? false : undefined,
  }),
});
