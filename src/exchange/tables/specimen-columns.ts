// The columns of a table of specimens: how each came to be, its name, how it is kept. A row stands for up to four
// records.
import {columns} from './column.ts';

export const specimenColumns = columns(`
  code kind:word lot sample stage:word sex:word at:instant since:instant fate:word condition animal
  individuals:number hosts:number hyper:yes-no subimago:yes-no exuviae=exuviae.code
  taxon qualifier rank:word identifiedBy identifiedOn:day
  preparation:word medium store agent killedAt:instant note
`);
