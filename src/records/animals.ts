// Animals of a lot that are followed by themselves, each under a number of its own.
import {atOf, type Entry, type Instant} from './entry.ts';
import type {Stage} from './stage.ts';
import type {Lot} from './state.ts';

export interface Animal {
  readonly animal: string;
  /** Each time its stage was seen, oldest first. */
  readonly seen: readonly {readonly at: Instant; readonly stage: Stage}[];
  readonly weights: readonly {readonly at: Instant; readonly mg: number}[];
  readonly photos: readonly string[];
  /** How it ended, where it has. */
  readonly end?: {readonly at: Instant; readonly how: Ending; readonly specimen?: string | undefined};
  readonly entries: readonly Entry[];
}

export type Ending = 'emerged' | 'parasitised' | 'preserved' | 'lost';

const ENDINGS: Readonly<Record<string, Ending>> = {
  emergence: 'emerged',
  parasitoid: 'parasitised',
  voucher: 'preserved',
  loss: 'lost',
};

/** In the order of their numbers. */
export function animalsOf({entries}: Pick<Lot, 'entries'>): Animal[] {
  const own = new Map<string, Entry[]>();
  for (const entry of entries) {
    const animal = 'animal' in entry.record ? entry.record.animal : undefined;
    if (animal !== undefined) own.set(animal, [...(own.get(animal) ?? []), entry]);
  }
  return [...own]
    .map(([animal, entries]) => animalOf(animal, entries))
    .sort((a, b) => a.animal.localeCompare(b.animal, 'en', {numeric: true}));
}

function animalOf(animal: string, entries: readonly Entry[]): Animal {
  const end = entries.find(({record}) => ENDINGS[record.record] !== undefined && !isProductOnly(record));
  const codes = end !== undefined && 'codes' in end.record ? end.record.codes : undefined;
  return {
    animal,
    entries,
    seen: entries.flatMap(entry =>
      entry.record.record === 'count'
        ? Object.keys(entry.record.stages).map(stage => ({at: atOf(entry), stage}))
        : [],
    ),
    weights: notes(entries).flatMap(({at, weightMg}) => (weightMg === undefined ? [] : [{at, mg: weightMg}])),
    photos: notes(entries).flatMap(({photo}) => photo ?? []),
    ...(end === undefined
      ? {}
      : {end: {at: atOf(end), how: ENDINGS[end.record.record]!, specimen: codes?.[0]}}),
  };
}

/** More parasitoids out of a host that has its end already. */
function isProductOnly(record: Entry['record']): boolean {
  return record.record === 'parasitoid' && record.hosts === 0;
}

function notes(entries: readonly Entry[]) {
  return entries.flatMap(entry =>
    entry.record.record === 'note' ? [{...entry.record, at: atOf(entry)}] : [],
  );
}
