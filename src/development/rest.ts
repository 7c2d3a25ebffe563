// Animals that rest (diapause) before they go on, and the cold that ends it.
import {MS_PER_DAY} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import {monthOfSeason} from '../records/season.ts';
import {doseCourse} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import {asShare} from './chance-words.ts';
import type {Temperatures} from './dose-course.ts';
import type {FounderClass} from './founders.ts';
import {ANY_STAGE} from './places.ts';
import type {Candidate} from './request.ts';

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
  readonly chance: number;
  /** Null where none rests. */
  readonly chill: Chill | null;
  /** Of those that rest, the share that waits for a second winter; null where no profile knows of any. */
  readonly secondYear: number | null;
}

export const NO_REST: Rest = {chance: 0, chill: null, secondYear: null};

/** More likely than not: then no date of direct development is given. */
export const MOSTLY = 0.5;
/** Where a profile states no cold: twelve weeks at 3 to 5 °C. Common practice, no source. */
const HOUSE_CHILL = {belowC: 7, days: 84};

type Entry = Profile['diapause'][number];

/** What is known of rest in a lot, over candidates and classes. The cold is that of the likeliest that rests. */
export function restOf(
  candidates: readonly Candidate[],
  weights: readonly number[],
  classes: readonly FounderClass[],
  course: Temperatures,
  nowDays: number,
  lagDays: number,
): Rest {
  const all = classes.reduce((sum, {count}) => sum + count, 0);
  let chance = 0;
  let secondYear: number | null = null;
  let heaviest: {readonly weight: number; readonly entry: Entry} | undefined;
  candidates.forEach(({profile}, i) => {
    for (const founders of classes) {
      const entry = entryFor(profile, founders, lagDays);
      if (entry === undefined) continue;
      const weight = (entry.chance * weights[i]! * founders.count) / all;
      chance += weight;
      if (entry.secondYear !== undefined) secondYear = (secondYear ?? 0) + weight * entry.secondYear;
      if (weight > (heaviest?.weight ?? 0)) heaviest = {weight, entry};
    }
  });
  if (heaviest === undefined) return {chance, chill: null, secondYear: null};
  const startDays = Math.min(...classes.map(({atDays}) => atDays));
  return {
    chance,
    chill: chillOf(heaviest.entry.chill, course, startDays, nowDays),
    secondYear: secondYear === null ? null : secondYear / chance,
  };
}

/**
 * The animals as they go on once the cold has been enough. Eggs, prepupae and pupae rest at the beginning of their
 * stage, larvae and nymphs wherever in it they were found.
 */
export function rested(classes: readonly FounderClass[], completeDays: number): readonly FounderClass[] {
  return classes.map(founders => ({
    ...founders,
    atDays: Math.max(founders.atDays, completeDays),
    progress: /^(egg|prepupa|pupa)/.test(founders.stage) ? ([0, 0] as const) : founders.progress,
  }));
}

/** What is to be said of it; nothing where next to none rests. */
export function restSentences({chance, chill, secondYear}: Rest): readonly string[] {
  if (chance <= 0.005) return [];
  const found = `Of animals found in this stage at this time of year ${asShare(chance)} rest (diapause) before they go on`;
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
