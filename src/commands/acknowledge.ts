import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [
    ['<alert>', 'its id, as teneral today shows it'],
    ['<done...>', 'what was done about it'],
  ],
  examples: ['acknowledge silent:L1:2026-06-12 battery replaced'],
  record: ([alert, ...words]) => ({record: 'acknowledge', alert, done: words.join(' ')}),
});
