// The columns of a table of specimens: how each came to be, its name, how it is kept. A row stands for up to three
// records.
import {columns} from './column.ts';

export const specimenColumns = columns({
  text: 'code kind lot sample stage sex fate condition animal taxon rank qualifier identifiedBy exuviae=exuviae.code preparation medium store agent note',
  day: 'identifiedOn',
  instant: 'at since killedAt',
  number: 'individuals hosts',
  'yes-no': 'hyper subimago',
});
