import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<about>', 'what it is about: a lot, unit, sample, specimen'],
    ['[words...]', 'the note'],
  ],
  options: command =>
    command
      .option('--photo <file>', 'name of a photograph')
      .option('--weight <mg>', 'weight of an animal', numberWord),
  examples: ['note C3 lamp replaced', 'note 26-031-A --animal 07 --weight 310 --photo IMG_2041.jpg'],
  record: ([about, ...words], {photo, weight}) => ({
    record: 'note',
    about,
    text: words.length === 0 ? undefined : words.join(' '),
    photo,
    weightMg: weight,
  }),
});
