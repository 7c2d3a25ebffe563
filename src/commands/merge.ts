import {recordCommand} from './recording.ts';

export const command = recordCommand({
  lodges: true,
  arguments: [
    ['<lot>', 'the lot that ends'],
    ['<into>', 'the lot its animals join; of the same field sample'],
  ],
  examples: ['merge 26-031-B 26-031-A'],
  record: ([lot, into]) => ({record: 'merge', lot, into}),
});
