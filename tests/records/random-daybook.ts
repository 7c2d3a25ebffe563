// Random daybooks: whatever of a random list of records the rules let in, written in any order of time.
import fc from 'fast-check';
import type {Entry} from '../../src/records/entry.ts';
import {Refusal} from '../../src/records/refusal.ts';
import {at, lot, sample, unit, type Written} from './daybook-of.ts';
import {withBatch} from './daybook-spec.ts';

const stages = ['egg', 'larva-1', 'larva-2', 'larva', 'prepupa', 'pupa'];
const lots = ['A', 'B', 'C', 'D'];
const kinds = [
  'count',
  'check',
  'hatch',
  'found',
  'loss',
  'voucher',
  'emergence',
  'parasitoid',
  'split',
  'merge',
  'merge',
  'move',
  'identification',
  'lot',
] as const;

const step = fc.record({
  kind: fc.constantFrom(...kinds),
  lot: fc.constantFrom(...lots),
  into: fc.constantFrom(...lots, 'E', 'F'),
  stage: fc.constantFrom(...stages),
  other: fc.constantFrom(...stages),
  count: fc.integer({min: 1, max: 6}),
  complete: fc.constantFrom(true, false, undefined),
  counted: fc.constantFrom('exact', 'exact', 'exact', 'estimated', 'unknown'),
  sample: fc.constantFrom('S1', 'S2'),
  minute: fc.integer({min: 0, max: 9999}),
});
type Step = typeof step extends fc.Arbitrary<infer Value> ? Value : never;

const beginning = [
  unit(),
  unit('C2'),
  sample(),
  sample('S2'),
  lot({egg: 4, 'larva-1': 12}),
  lot({pupa: 5}, {code: 'B'}),
  lot({'larva-2': 9}, {code: 'C', sample: 'S2'}),
];

/** The records offered, at distinct instants, and the entries that were let in. */
export const randomDaybook = fc
  .uniqueArray(step, {minLength: 5, maxLength: 40, selector: ({minute}) => minute})
  .map(steps => {
    const offered = steps.map(recordFor);
    let entries = withBatch([], beginning);
    for (const record of offered) {
      try {
        entries = withBatch(entries, [record]);
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
      }
    }
    return entries;
  });

export type Daybook = readonly Entry[];

function recordFor(step: Step, number: number): Written {
  const {kind, count, stage, other, complete, counted} = step;
  const instant = new Date(at(0) + step.minute * 60_000).toISOString();
  const about = {record: kind, lot: step.lot, at: instant};
  const codes = Array.from({length: count}, (_, index) => `x${number}-${index}`);
  switch (kind) {
    case 'lot':
      return {
        record: kind,
        code: step.lot,
        sample: step.sample,
        unit: 'C1',
        at: instant,
        stages: {[stage]: count + 4},
        counted,
      };
    case 'count':
      return {
        ...about,
        stages: {[stage]: count, [other]: count + 3},
        ...(complete === undefined ? {} : {complete}),
      };
    case 'check':
      return about;
    case 'hatch':
      return {...about, count};
    case 'found':
    case 'loss':
      return {...about, stage, count};
    case 'voucher':
      return {...about, stage, count, codes};
    case 'emergence':
      return {...about, adults: [{sex: 'female', count}], codes};
    case 'parasitoid':
      return {...about, count, hosts: Math.min(count, 2), codes};
    case 'split':
      return {...about, into: step.into, stages: {[stage]: count}};
    case 'merge':
      return {...about, into: step.into};
    case 'move':
      return {...about, unit: 'C2'};
    case 'identification':
      return {
        record: kind,
        specimen: `x${Math.max(number - count, 0)}-0`,
        taxon: `taxon ${number}`,
        at: instant,
      };
  }
}
