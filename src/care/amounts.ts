// How much of something a task takes: water from the unit's volume, food by number and stage of those that eat.
import {isHidden} from '../records/fold-lots.ts';
import type {Stage} from '../records/stage.ts';
import type {Lot, Rule} from '../records/state.ts';
import type {Job} from './job.ts';
import {eats} from './stages.ts';
import {daysAtReference} from './window.ts';

type Amount = NonNullable<Rule['amount']>;
/** Food by the number of animals. */
export type FoodEach = Extract<Amount, {each: unknown}>;

/** The food that a task takes once. */
export interface Ration {
  /** In the unit that `of` begins with. */
  readonly amount: number;
  /** Unit and food: "mg food", "aphids". */
  readonly of: string;
  /** The animals were estimated, not counted. */
  readonly estimated: boolean;
  /** Of some of the animals nobody knows how much they take: it is more than this. */
  readonly atLeast: boolean;
  /** Not each time: for all the time that the animals feed. */
  readonly inAll: boolean;
}

/**
 * "4 of 12 litres", "a third of the water", "about 54 mg food", "0.24 mg food each" where nobody counted; null where
 * the rule gives no amount, or none for these animals.
 */
export function amountOf(job: Job): string | null {
  const {
    rule: {amount, every},
    unit,
    lot,
  } = job;
  if (amount === undefined) return null;
  if ('share' in amount) {
    const {share} = amount;
    if (unit.volumeLitres === undefined) return `${shareWords(share)} of the water`;
    return `${tidy(share * unit.volumeLitres)} of ${tidy(unit.volumeLitres)} litres`;
  }
  const ration = rationOf(job);
  if (ration !== null) return rationWords(ration);
  if (!('each' in amount) || typeof amount.each !== 'number' || lot?.counted !== 'unknown') return null;
  return `${tidy(amount.each * timesDaily(amount, every))} ${amount.of} each`;
}

/**
 * The food that a job takes once; null where the rule or the count does not tell.
 * @param stages how many animals of each stage; those last counted when not given
 */
export function rationOf(
  {rule: {amount, every}, lot}: Job,
  stages: Readonly<Record<Stage, number>> | undefined = lot?.alive,
): Ration | null {
  if (amount === undefined || 'share' in amount || lot === undefined || stages === undefined) return null;
  if ('whole' in amount)
    return {amount: amount.whole, of: amount.of, estimated: false, atLeast: false, inAll: false};
  return rationFor(stages, amount, every, lot);
}

/**
 * The food that so many animals of each stage take once.
 * @param stages how many; they need not be whole, as those to be expected on a day to come
 */
export function rationFor(
  stages: Readonly<Record<Stage, number>>,
  amount: FoodEach,
  every: Rule['every'],
  lot: Pick<Lot, 'counted' | 'material'>,
): Ration | null {
  let sum = 0;
  let atLeast = isHidden(lot);
  for (const [stage, count] of Object.entries(stages)) {
    if (!eats(stage) || count === 0) continue;
    const each = eachOf(stage, amount.each);
    if (each === undefined) atLeast = true;
    else sum += count * each;
  }
  if (sum === 0) return null;
  return {
    amount: rounded(sum * timesDaily(amount, every)),
    of: amount.of,
    estimated: lot.counted === 'estimated',
    atLeast,
    inAll: amount.per === 'life',
  };
}

/** "54 mg food", "about 5.4 g food", "at least 12 aphids", "40 g meat in all". */
export function rationWords({amount, of, estimated, atLeast, inAll}: Ration): string {
  return `${atLeast ? 'at least ' : estimated ? 'about ' : ''}${quantityWords(amount, of)}${inAll ? ' in all' : ''}`;
}

/** "54 mg food" */
export function quantityWords(amount: number, of: string): string {
  const {name, by} = scaleOf(amount, of);
  return `${tidy(amount / by)} ${name}`;
}

/** Thousands of milligrams are told in grams, thousands of grams in kilograms: the unit and food, and what to divide by. */
export function scaleOf(amount: number, of: string): {readonly name: string; readonly by: number} {
  const [, unit, food] = /^(mg|g) (.+)$/.exec(of) ?? [];
  if (unit === undefined || amount < 1000) return {name: of, by: 1};
  const {name, by} = scaleOf(amount / 1000, `${unit === 'mg' ? 'g' : 'kg'} ${food}`);
  return {name, by: 1000 * by};
}

/** What one animal of a stage takes; undefined where it is not said. */
export function eachOf(stage: Stage, each: FoodEach['each']): number | undefined {
  if (typeof each === 'number') return each;
  if (each[stage] !== undefined) return each[stage];
  const [kind = '', instar] = stage.split('-');
  for (let earlier = Number(instar) - 1; earlier > 0; earlier--) {
    const known = each[`${kind}-${earlier}`];
    if (known !== undefined) return known;
  }
  return each[kind];
}

/** How many days' food is given at once: those to the next time, at 20 °C where it is due by warmth. */
function timesDaily({per}: FoodEach, every: Rule['every']): number {
  if (per !== 'day') return 1;
  return 'days' in every ? every.days : daysAtReference(every);
}

function shareWords(share: number): string {
  const known = [
    [1 / 4, 'a quarter'],
    [1 / 3, 'a third'],
    [1 / 2, 'half'],
    [3 / 4, 'three quarters'],
    [1, 'all'],
  ] as const;
  return known.find(([value]) => Math.abs(value - share) < 0.02)?.[1] ?? `${Math.round(100 * share)} %`;
}

/** Without the crumbs of adding up. */
export function rounded(amount: number): number {
  return Number(amount.toPrecision(6));
}

/** To two figures that matter below ten, whole above. */
function tidy(value: number): string {
  return value >= 10 ? String(Math.round(value)) : String(Number(value.toPrecision(2)));
}
