// The columns of a table of field samples.
import {columns} from './column.ts';

export const sampleColumns = columns({
  text: 'code method country=place.country region=place.region locality=place.locality datum=place.datum verbatimCoordinates=place.verbatimCoordinates host hostPart substrate habitat medium permit weather bait=trap.bait lamp=trap.lamp amountUnit=amount.unit note',
  day: 'collectedFrom=collected.from collectedTo=collected.to lastEmptied=trap.lastEmptied baitSince=trap.baitSince',
  list: 'collectors',
  number:
    'latitude=place.latitude longitude=place.longitude uncertaintyM=place.uncertaintyM elevationM=place.elevationM traps=trap.traps meshMm=trap.meshMm acrossCm=trap.acrossCm widthCm=trap.widthCm turns=trap.turns heightM=trap.heightM waterC amount=amount.amount deadOnArrival',
});
