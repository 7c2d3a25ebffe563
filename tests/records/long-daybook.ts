// Daybooks of thousands of entries that hold by construction: animals are taken only from where they are.
import fc from 'fast-check';
import {at, type Written} from './daybook-of.ts';

const STAGES = ['egg', 'larva-1', 'larva-2', 'larva-3', 'pupa'];
const KINDS = [
  'lot',
  'count',
  'count',
  'hatch',
  'found',
  'loss',
  'loss',
  'voucher',
  'emergence',
  'emergence',
  'parasitoid',
  'hyperparasitoid',
  'split',
  'merge',
  'move',
  'identification',
  'preparation',
  'revision',
  'note',
  'subsample',
  'bycatch',
  'sorting',
  'taken out',
  'eggs',
  'close',
] as const;

const step = fc.record({
  kind: fc.constantFrom(...KINDS),
  pick: fc.nat(9999),
  other: fc.nat(9999),
  stage: fc.constantFrom(...STAGES),
  count: fc.integer({min: 1, max: 9}),
});
type Step = typeof step extends fc.Arbitrary<infer Value> ? Value : never;

/** Records at distinct instants, a minute apart. */
export const longDaybook = fc.array(step, {minLength: 2500, maxLength: 3500}).map(steps => recordsOf(steps));

export const TWO_UNITS: readonly Written[] = [
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
  {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2'},
];

interface LotModel {
  readonly code: string;
  readonly sample: string;
  alive: number;
  open: boolean;
}

/** A room as simple as it can be, kept beside the one that is tested. */
function recordsOf(steps: readonly Step[]): Written[] {
  const samples = ['S0', 'S1', 'S2'];
  const lots: LotModel[] = [];
  const specimens: string[] = [];
  const records: Written[] = [
    ...TWO_UNITS,
    ...samples.map(code => ({record: 'sample', code, collected: {from: '2031-04-29'}, method: 'search'})),
  ];
  for (const [i, one] of steps.entries()) {
    const instant = new Date(at(0) + i * 60_000).toISOString();
    const made = recordFor(one, i, instant, {samples, lots, specimens});
    if (made !== undefined) records.push(made);
  }
  return records;
}

interface Model {
  readonly samples: string[];
  readonly lots: LotModel[];
  readonly specimens: string[];
}

function recordFor(
  {kind, pick, other, stage, count}: Step,
  i: number,
  when: string,
  model: Model,
): Written | undefined {
  const {samples, lots, specimens} = model;
  const sample = samples[pick % samples.length]!;
  const open = lots.filter(one => one.open);
  const lot = open[pick % Math.max(1, open.length)];
  const specimen = specimens[pick % Math.max(1, specimens.length)];
  const some = Math.min(count, lot?.alive ?? 0);
  const code = `n${i}`;
  const codes = (many: number) => {
    const own = Array.from({length: many}, (_, k) => `${code}-${k}`);
    specimens.push(...own);
    return own;
  };
  const take = (many: number) => {
    lot!.alive -= many;
    return many;
  };

  switch (kind) {
    case 'lot':
      lots.push({code, sample, alive: count + 20, open: true});
      return {record: 'lot', code, sample, unit: 'C1', at: when, stages: {[stage]: count + 20}};
    case 'subsample':
      samples.push(code);
      return {record: 'subsample', code, of: sample, part: `part ${i}`, at: when};
    case 'bycatch':
      return {record: 'bycatch', sample, what: 'lizard', count, done: 'released', at: when};
    case 'sorting':
      return {record: 'sorting', sample, state: 'partly', at: when};
    case 'taken out': {
      const [own] = codes(1);
      return {record: 'voucher', sample, stage: 'adult', count, together: true, codes: [own], at: when};
    }
    case 'identification':
      return specimen === undefined ? undefined : {record: kind, specimen, taxon: `taxon ${i}`, at: when};
    case 'preparation':
      return specimen === undefined ? undefined : {record: kind, specimen, method: 'pinned', at: when};
    case 'eggs':
      if (specimen === undefined) return undefined;
      lots.push({code, sample: '', alive: count, open: true});
      return {record: 'lot', code, from: {specimen}, unit: 'C2', at: when, stages: {egg: count}};
    default:
  }
  if (lot === undefined) return undefined;
  const about = {record: kind, lot: lot.code, at: when};
  switch (kind) {
    case 'count':
      return lot.alive === 0 ? undefined : {...about, stages: {[stage]: lot.alive}};
    case 'hatch':
      lot.alive += count;
      return {...about, record: 'found', stage: 'larva-1', count};
    case 'found':
      lot.alive += count;
      return {...about, stage, count};
    case 'loss':
      return some === 0 ? undefined : {...about, count: take(some), cause: 'dead'};
    case 'voucher':
      return some === 0 ? undefined : {...about, count: take(some), codes: codes(some)};
    case 'emergence':
      return some === 0
        ? undefined
        : {...about, adults: [{sex: 'male', count: take(some)}], codes: codes(some)};
    case 'parasitoid': {
      if (some === 0) return undefined;
      take(1);
      return {...about, count: count + 3, together: true, hosts: 1, codes: codes(1)};
    }
    case 'hyperparasitoid':
      return {
        ...about,
        record: 'parasitoid',
        count,
        hyper: true,
        outOf: 'Braconidae',
        hosts: 0,
        codes: codes(count),
      };
    case 'split':
      if (some === 0) return undefined;
      lots.push({code, sample: lot.sample, alive: take(some), open: true});
      return {...about, into: code, stages: {[stage]: some}};
    case 'merge': {
      const kin = open.filter(one => one !== lot && one.sample === lot.sample && lot.sample !== '');
      const into = kin[other % Math.max(1, kin.length)];
      if (into === undefined) return undefined;
      into.alive += lot.alive;
      lot.alive = 0;
      lot.open = false;
      return {...about, into: into.code};
    }
    case 'move':
      return {...about, unit: 'C2'};
    case 'revision':
      return {...about, taxon: `taxon ${i}`};
    case 'note':
      return {record: kind, about: lot.code, text: 'seen', at: when};
    case 'close':
      if (lots.length < 20 || lot.alive > 0) return undefined;
      lot.open = false;
      return about;
    default:
      return undefined;
  }
}
