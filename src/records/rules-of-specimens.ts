// Rules about specimens: what is said of one can have happened to it, and stands with its own lot.
import {instantOf} from './entry.ts';
import type {Rule} from './rule.ts';

const identifiedAfterItWasFound: Rule = (room, {at, entry: {record}}, {civil}) => {
  if (record.record !== 'identification' && record.record !== 'preparation') return undefined;
  const specimen = room.specimens.get(record.specimen);
  if (specimen === undefined || at >= specimen.at) return undefined;
  const what = `${civil.iso(at)} is before ${specimen.code} was found (${civil.iso(specimen.at)})`;
  return {what, mend: 'Correct "at".'};
};

const killedAfterItWasFound: Rule = (room, {at, entry: {record}}, {civil}) => {
  if (record.record !== 'preparation') return undefined;
  const specimen = room.specimens.get(record.specimen);
  if (specimen === undefined) return undefined;
  if (specimen.fate === 'released')
    return {what: `${specimen.code} was released`, mend: 'Correct the specimen, or void its emergence.'};
  if (record.killedAt === undefined) return undefined;
  const killed = instantOf(record.killedAt);
  if (specimen.at <= killed && killed <= at) return undefined;
  const what = `killed ${record.killedAt}, which is not between the day it was found (${civil.iso(specimen.at)}) and ${civil.iso(at)}`;
  return {what, mend: 'Correct "killedAt".'};
};

/** A parasitoid's name is not its host's. */
const namedByItsOwnAnimals: Rule = (room, {entry: {record}}) => {
  if (record.record !== 'revision' || record.specimen === undefined) return undefined;
  const specimen = room.specimens.get(record.specimen);
  if (specimen === undefined) return undefined;
  const {code, lot, kind} = specimen;
  if (lot !== record.lot)
    return {what: `${code} did not come out of lot ${record.lot}`, mend: 'Name one that did.'};
  if (record.taxon === undefined && record.candidates === undefined)
    return {what: `${code} has no name yet`, mend: 'Identify it first, or give the "taxon".'};
  if (kind !== 'parasitoid') return undefined;
  return {what: `${code} is a parasitoid, and lot ${lot} is its hosts`, mend: 'Name the lot after a host.'};
};

export const rulesOfSpecimens: readonly Rule[] = [
  identifiedAfterItWasFound,
  killedAfterItWasFound,
  namedByItsOwnAnimals,
];
