import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<stage>', 'their stage'],
    ['<count>', 'animals found beyond those known'],
  ],
  options: command => command.option('--why <text>', 'how they were overlooked'),
  examples: ['found 26-031-A pupa 1 --why "under the moss"'],
  record: ([lot, stage, count], {why}) => ({
    record: 'found',
    lot,
    stage,
    count: numberWord(count ?? ''),
    why,
  }),
});
