import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [['<specimen>', 'the subimago that has moulted to the imago']],
  examples: ['imago 26-047-A-1'],
  record: ([specimen]) => ({record: 'imago', specimen}),
});
