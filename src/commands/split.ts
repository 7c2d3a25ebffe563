import {recordCommand} from './recording.ts';
import {stageWords} from './words.ts';

export const command = recordCommand({
  lodges: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<into>', 'the code of the new lot'],
    ['<stage=n...>', 'the animals that go into it'],
  ],
  options: command => command.option('--unit <code>', 'the unit of the new lot (default: the same)'),
  examples: ['split 26-031-A 26-031-B pupa=4 --unit C6'],
  record: ([lot, into, ...counts], {unit}) => ({
    record: 'split',
    lot,
    into,
    unit,
    stages: stageWords(counts),
  }),
});
