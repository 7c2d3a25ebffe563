// The columns of a table of field samples.
import {columns} from './column.ts';

export const sampleColumns = columns(`
  code method:word collectedFrom:instant=collected.from collectedTo:instant=collected.to collectors:list
  country=place.country region=place.region locality=place.locality latitude:number=place.latitude
  longitude:number=place.longitude uncertaintyM:number=place.uncertaintyM datum=place.datum
  verbatimCoordinates=place.verbatimCoordinates elevationM:number=place.elevationM
  host hostPart substrate habitat medium:word permit weather waterC:number
  amount:number=amount.amount amountUnit=amount.unit deadOnArrival:number
  lastEmptied:instant=trap.lastEmptied traps:number=trap.traps bait=trap.bait baitSince:day=trap.baitSince
  lamp=trap.lamp meshMm:number=trap.meshMm acrossCm:number=trap.acrossCm widthCm:number=trap.widthCm
  turns:number=trap.turns heightM:number=trap.heightM note
`);
