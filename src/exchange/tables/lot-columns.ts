// The columns of a table of lots, as they begin.
import {columns} from './column.ts';

export const lotColumns = columns({
  text: 'code sample unit taxon ages counted material=material.what materialUnit=material.unit fromSpecimen=from.specimen fromLot=from.lot note',
  instant: 'at',
  counts: 'stages',
  number: 'materialAmount=material.amount within',
  'yes-no': 'foundAlive',
});
