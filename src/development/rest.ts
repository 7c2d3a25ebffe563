// Animals that rest (diapause) before they go on, and the cold that ends it.
import {MS_PER_DAY} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import {monthOfSeason} from '../records/season.ts';
import {doseCourse} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import {asShare} from './chance-words.ts';
import type {Temperatures} from './dose-course.ts';
import type {FounderClass} from './founders.ts';
import type {CandidateMember} from './members.ts';
import {ANY_STAGE} from './places.ts';
import type {Candidate} from './request.ts';
import {type PaceLine, restingAmong} from './scenario.ts';

/** The cold that ends a rest, and how much of it the lot has had since it began. */
export interface Chill {
  readonly belowC: number;
  /** Days below the limit, or degree-days below it. */
  readonly unit: 'days' | 'degreeDays';
  readonly required: number;
  readonly gathered: number;
  /** When it is complete, at the temperatures expected; null where it is not within the horizon. */
  readonly completeDays: number | null;
  /** Stated by the profile; else the house rule. */
  readonly stated: boolean;
}

export interface Rest {
  /** That an animal of the lot, as it was found, is one that rests. */
  readonly atFirst: number;
  /** That one that is alive now rests, after all that was seen. */
  readonly chance: number;
  /** Null where none rests. */
  readonly chill: Chill | null;
  /** Of those that rest, the share that waits for a second winter; null where no profile knows of any. */
  readonly secondYear: number | null;
}

export const NO_REST: Rest = {atFirst: 0, chance: 0, chill: null, secondYear: null};

/** More likely than not: then no date of direct development is given. */
export const MOSTLY = 0.5;
/** Where a profile states no cold: twelve weeks at 3 to 5 °C. Common practice, no source. */
const HOUSE_CHILL = {belowC: 7, days: 84};

type Entry = Profile['diapause'][number];

/**
 * Where no profile tells of rest, so likely an animal is to rest that came in between late summer and winter, and one
 * that came in at another time. Only of lots that are late. Common practice, no source.
 */
const HOUSE_CHANCE = {shortDays: 0.3, otherwise: 0.05};
/** Months of the northern year. */
const SHORT_DAYS: readonly number[] = [8, 9, 10, 11, 12, 1, 2];

/** For each candidate what is known of rest in each class of founders. */
export type RestEntries = readonly (readonly (Entry | undefined)[])[];

export function restEntriesOf(
  candidates: readonly Candidate[],
  classes: readonly FounderClass[],
  lagDays: number,
): RestEntries {
  return candidates.map(({profile}) => classes.map(founders => entryFor(profile, founders, lagDays)));
}

/** What the house takes for likely where no profile says anything of rest; null where one does. */
export function houseRestOf(
  candidates: readonly Candidate[],
  classes: readonly FounderClass[],
  lagDays: number,
): RestEntries | null {
  if (candidates.some(({profile}) => profile.diapause.length > 0)) return null;
  const own = classes.map(({stage, atDays}): Entry => {
    const months = [monthOfSeason(atDays * MS_PER_DAY, lagDays)];
    const chance = SHORT_DAYS.includes(months[0]!) ? HOUSE_CHANCE.shortDays : HOUSE_CHANCE.otherwise;
    return {stage, months, chance, source: 'house'};
  });
  return candidates.map(() => own);
}

/** In a lot of one sort one animal in so many does as most do in a lot of the other. Common practice, no source. */
const STRAYS = 4;
/** Chances of rest below this are none. */
const NEVER = 0.01;

/**
 * Whether animals rest is decided by the day length, warmth and mothers they share: lots are unlike, their animals
 * alike. So each member comes in two sorts. In the lots that mostly rest, as likely as the highest chance P of a class,
 * an animal of chance c rests with c + (1 − P) / P · c · (1 − 1/k); in the others with c / k. On average it is c.
 */
export function inTwoSorts(
  members: readonly CandidateMember[],
  entries: RestEntries,
): readonly CandidateMember[] {
  return members.flatMap(member => {
    const chances = entries[member.candidate]!.map(entry => entry?.chance ?? 0);
    const most = Math.max(...chances);
    if (most < NEVER) return [member];
    const strays = chances.map(chance => chance / STRAYS);
    const resting = chances.map((chance, c) => chance + ((1 - most) / most) * (chance - strays[c]!));
    if (most === 1) return [{...member, rests: resting}];
    return [
      {...member, weight: member.weight * (1 - most), rests: strays},
      {...member, weight: member.weight * most, rests: resting},
    ];
  });
}

/** By candidate, that an animal as it was found is of it and rests; weights sum to one. */
export function restingAtFirst(
  weights: readonly number[],
  entries: RestEntries,
  classes: readonly FounderClass[],
): readonly number[] {
  const all = classes.reduce((sum, {count}) => sum + count, 0);
  return entries.map((known, i) =>
    known.reduce((sum, entry, c) => sum + (weights[i]! * (entry?.chance ?? 0) * classes[c]!.count) / all, 0),
  );
}

/** By candidate, that an animal alive now is of it and rests, as the lines weigh. */
export function restingNow(lines: readonly PaceLine[], candidates: number): readonly number[] {
  const sums = new Array<number>(candidates).fill(0);
  let whole = 0;
  for (const {member, points} of lines)
    for (const {weight, classes} of points) {
      if (weight === 0) continue;
      whole += weight;
      sums[member.candidate] = sums[member.candidate]! + weight * restingAmong(classes);
    }
  return sums.map(sum => sum / whole);
}

/**
 * That one rests, given that one which never came out may be dead as well: both look alike, and only rest was weighed.
 * @param weighed that it rests if none dies
 * @param atFirst that it rests, before anything was seen
 * @param dead that it dies before it emerges
 */
export function restRatherThanDeath(weighed: number, atFirst: number, dead: number): number {
  if (weighed === 0 || atFirst === 0 || atFirst + dead >= 1) return weighed;
  const never = (weighed * (atFirst + dead)) / atFirst;
  const goingOn = ((1 - weighed) * (1 - atFirst - dead)) / (1 - atFirst);
  return weighed / (never + goingOn);
}

/**
 * What is known of rest in a lot. The cold is that of the candidate and class that most likely rests.
 * @param resting by candidate, that an animal is of it and rests
 */
export function restOf(
  {
    atFirst,
    chance,
    resting,
  }: {readonly atFirst: number; readonly chance: number; readonly resting: readonly number[]},
  entries: RestEntries,
  classes: readonly FounderClass[],
  course: Temperatures,
  nowDays: number,
): Rest {
  const heaviest = entryOfMost(resting, entries, classes);
  if (heaviest === undefined) return {atFirst, chance, chill: null, secondYear: null};
  const second = resting.map((weight, i) => {
    const known = entries[i]!.flatMap(entry => entry?.secondYear ?? []);
    return known.length === 0 ? undefined : weight * Math.max(...known);
  });
  const whole = resting.reduce((sum, weight) => sum + weight, 0);
  const startDays = Math.min(...classes.map(({atDays}) => atDays));
  return {
    atFirst,
    chance,
    chill: chillOf(heaviest.chill, course, startDays, nowDays),
    secondYear: second.every(share => share === undefined)
      ? null
      : second.reduce<number>((sum, share) => sum + (share ?? 0), 0) / whole,
  };
}

function entryOfMost(
  resting: readonly number[],
  entries: RestEntries,
  classes: readonly FounderClass[],
): Entry | undefined {
  let most = 0;
  let likeliest: Entry | undefined;
  entries.forEach((known, i) => {
    const weightOf = (entry: Entry | undefined, c: number) => (entry?.chance ?? 0) * classes[c]!.count;
    const all = known.reduce((sum, entry, c) => sum + weightOf(entry, c), 0);
    known.forEach((entry, c) => {
      const weight = all === 0 ? 0 : (resting[i]! * weightOf(entry, c)) / all;
      if (weight <= most) return;
      most = weight;
      likeliest = entry;
    });
  });
  return likeliest;
}

/**
 * The animals as they go on once the cold has been enough. Eggs, prepupae and pupae rest at the beginning of their
 * stage, larvae and nymphs wherever in it they were found.
 */
export function rested(classes: readonly FounderClass[]): readonly FounderClass[] {
  return classes.map(founders => ({
    ...founders,
    progress: /^(egg|prepupa|pupa)/.test(founders.stage) ? ([0, 0] as const) : founders.progress,
  }));
}

/** What is to be said of it; nothing where next to none rests. */
export function restSentences({atFirst, chance, chill, secondYear}: Rest): readonly string[] {
  if (Math.max(atFirst, chance) <= 0.005) return [];
  const shares = [atFirst, chance].map(asShare);
  const now = shares[0] === shares[1] ? '' : `, of these after what was seen ${shares[1]}`;
  const found = `Of animals found in this stage at this time of year ${shares[0]} rest (diapause) before they go on${now}`;
  if (chance < MOSTLY || chill === null) return [`${found}; every date here holds for the others.`];
  const cold = `${amountOf(chill.required, chill)} below ${chill.belowC} °C${chill.stated ? '' : ' (house rule: its profile states none)'}`;
  const so = `${amountOf(chill.gathered, chill)} so far in this room`;
  const dated =
    chill.completeDays === null
      ? `no date can be given before they have had ${cold}: ${so}, and it is not enough within a year at the temperatures expected. Cold before they came here is not counted`
      : `every date here counts from when they have had ${cold}: ${so}. Cold before they came here is not counted`;
  const second =
    secondYear === null
      ? []
      : [
          `Of those that rest, ${asShare(secondYear)} wait for a second winter: keep what has not come out for another year.`,
        ];
  return [`${found}; ${dated}.`, ...second];
}

function amountOf(amount: number, {unit}: Chill): string {
  return `${Math.round(amount)} ${unit === 'days' ? 'days' : 'degree-days'}`;
}

/** The month is that of the day it joined the lot; a larva's chance holds for its instars too. */
function entryFor({diapause}: Profile, {stage, atDays}: FounderClass, lagDays: number): Entry | undefined {
  const month = monthOfSeason(atDays * MS_PER_DAY, lagDays);
  return diapause
    .filter(
      entry =>
        entry.months.includes(month) &&
        (stage === ANY_STAGE || entry.stage === stage || stage.startsWith(`${entry.stage}-`)),
    )
    .toSorted((a, b) => b.chance - a.chance)[0];
}

function chillOf(stated: Entry['chill'], course: Temperatures, startDays: number, nowDays: number): Chill {
  const chill = stated ?? HOUSE_CHILL;
  const [unit, required] =
    'degreeDays' in chill && chill.degreeDays !== undefined
      ? (['degreeDays', chill.degreeDays] as const)
      : (['days', chill.days ?? HOUSE_CHILL.days] as const);
  const model = unit === 'days' ? daysBelow(chill.belowC) : degreeDaysBelow(chill.belowC);
  const end = course.atDays.at(-1) ?? startDays;
  const nodes = Float64Array.from({length: Math.max(2, Math.ceil(end - startDays) + 1)}, (_, day) =>
    Math.min(end, startDays + day),
  );
  const cold = doseCourse(course, model, nodes);
  const before = cold[0]!;
  const at = (node: number) => cold[node]! - before;
  const today = Math.min(nodes.length - 1, Math.max(0, nowDays - startDays));
  const node = Math.min(nodes.length - 2, Math.floor(today));
  const after = cold.findIndex((_, i) => at(i) >= required);
  return {
    belowC: chill.belowC,
    unit,
    required,
    gathered: at(node) + (today - node) * (at(node + 1) - at(node)),
    completeDays:
      after < 0
        ? null
        : after === 0
          ? startDays
          : nodes[after - 1]! + (required - at(after - 1)) / (at(after) - at(after - 1)),
    stated: stated !== undefined,
  };
}

/** A day counts as far as it lies below the limit: rate 1 there, so the antiderivative is min(T, limit). */
function daysBelow(limitC: number): RateModel {
  return {
    ratePerDay: celsius => (celsius < limitC ? 1 : 0),
    antiderivative: celsius => Math.min(celsius, limitC),
  };
}

/** Degree-days of cold: the rate is limit − T below the limit, so the antiderivative is −(limit − T)² / 2. */
function degreeDaysBelow(limitC: number): RateModel {
  return {
    ratePerDay: celsius => Math.max(0, limitC - celsius),
    antiderivative: celsius => -(Math.max(0, limitC - celsius) ** 2) / 2,
  };
}
