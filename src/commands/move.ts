import {recordCommand} from './recording.ts';

export const command = recordCommand({
  lodges: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<unit>', 'the unit it lives in from now on'],
  ],
  examples: ['move 26-031-A C5'],
  record: ([lot, unit]) => ({record: 'move', lot, unit}),
});
