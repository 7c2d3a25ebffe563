import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [['<lot>', 'the lot that was looked at for adults; none was out']],
  examples: ['check 26-031-A', 'emerge 26-031-A --female 2   (when some were out)'],
  record: ([lot]) => ({record: 'check', lot, found: 0}),
});
