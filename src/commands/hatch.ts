import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<lot>', 'the lot'],
    ['<count>', 'larvae or nymphs that hatched'],
  ],
  examples: ['hatch 26-050-A 30'],
  record: ([lot, count]) => ({record: 'hatch', lot, count: numberWord(count ?? '')}),
});
