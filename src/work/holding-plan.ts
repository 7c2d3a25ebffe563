// At which temperature a lot is to be held so that its adults are there by a day, and which unit would do.
import type {Held} from '../climate/futures.ts';
import type {Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Lot} from '../records/state.ts';
import {type Limits, limitsOf} from './bearable.ts';
import type {Desk} from './desk.ts';
import {lotOf, outlooker} from './outlook.ts';
import {profilesOf} from './profiles.ts';
import {type UnitChoice, type UnitChoices, unitsFor} from './unit-choice.ts';

/** There are no dates to plan by; where the lot can live may be asked all the same. */
export class NoForecast extends Refusal {}

export interface PlanQuestion {
  readonly lot: string;
  readonly adultsBy: Day;
  /** The instant of that day by which they are to be out; default: at some time of it, noon being aimed at. */
  readonly byInstant?: Instant | undefined;
  /** How many of those alive are to be out by then. */
  readonly share: number;
}

/** Of a unit as it stands: in time; so early that adults would be old or dead by then; or too late. */
export type Judgement = 'in-time' | 'early' | 'late';

export interface JudgedUnit extends UnitChoice {
  readonly judgement: Judgement;
}

/** First in one unit, then in a cooler one. */
export interface UnitMix {
  readonly first: {readonly unit: string; readonly celsius: number; readonly days: number};
  readonly afterwards: {readonly unit: string; readonly celsius: number};
  /** When the share is out, and half of them. */
  readonly at: Instant | null;
  readonly p50: Instant | null;
}

/** What may be held in reserve: a part of the lot somewhat warmer. */
export interface Reserve {
  readonly holdC: number;
  readonly p50: Instant | null;
}

export interface HoldingPlan extends UnitChoices {
  readonly lot: string;
  readonly adultsBy: Day;
  readonly share: number;
  /** Some temperature within the limits brings the share out by the day. */
  readonly possible: boolean;
  /** The lowest that does; null where none does. */
  readonly holdC: number | null;
  /** When the share is out at that temperature. */
  readonly at: Instant | null;
  /** Even the lowest temperature of the limits has the share out before the day. */
  readonly early: boolean;
  /** What the limits allow. */
  readonly earliest: Instant | null;
  readonly earliestC: number | null;
  readonly latest: Instant | null;
  readonly limits: Limits;
  /** When it is out if nothing is changed. */
  readonly asItIs: Instant | null;
  readonly byInstant?: Instant | undefined;
  /** When one in twenty, half and nineteen in twenty are out at that temperature; null where none does. */
  readonly spread: {
    readonly p05: Instant | null;
    readonly p50: Instant | null;
    readonly p95: Instant | null;
  } | null;
  readonly units: readonly JudgedUnit[];
  /** Where no unit alone is in time: two that are, one after the other. */
  readonly mix: UnitMix | null;
  readonly reserve: Reserve | null;
  /** All are taken to be of one age: where they are not, they come out over more days. */
  readonly agesAlike: boolean;
}

/** Candidates that weigh less do not bind the plan. */
const MATTERS = 0.05;
const STEPS = 16;
/** To an hour: finer than any unit is held. */
const CLOSE_DAYS = 0.04;
const MOST_ATTEMPTS = 4;

/** @throws Refusal where there is no such lot, it is closed, or the day or share make no sense */
export async function holdingPlan(desk: Desk, question: PlanQuestion): Promise<HoldingPlan> {
  const {civil, state} = desk;
  const lot = lotOf(desk, question.lot, 'plan');
  refuseSenseless(question, lot, desk);
  const outlookOf = outlooker(desk, [lot]);
  const {share: chance} = question;
  const asked = {chances: [chance, 0.5, 0.05, 0.95]};
  const {forecast} = await outlookOf(lot, {asked});
  if (forecast.status === 'unknown')
    throw new NoForecast(
      `${lot.code} has no forecast to plan by`,
      'plan',
      forecast.assumptions[0] ?? 'A candidate would give one.',
    );
  const heavy = forecast.candidates.filter(({weight}) => weight >= MATTERS).map(({profile}) => profile);
  const profiles = await profilesOf(heavy, state);
  const limits = limitsOf([...profiles.values()], lot.needs);
  // At noon of the day: neither in its night nor on the day after.
  const wanted = (question.byInstant ?? civil.at(question.adultsBy, '12:00')) / MS_PER_DAY;
  const limit = question.byInstant ?? civil.at(civil.addDays(question.adultsBy, 1), '00:00');
  const reach = await reachOf(
    limits,
    wanted,
    desk.now / MS_PER_DAY,
    async heldEach => {
      const inFutures = heldEach.map((_, future) => ({future, chance}));
      return (await outlookOf(lot, {heldEach, asked: {inFutures}})).forecast.inFutures;
    },
    async holdC => (await outlookOf(lot, {holdC, asked})).forecast.atChances[0] ?? null,
  );
  const choices = await unitsFor(lot, desk, profiles, limits, limit, stays => outlookOf(lot, {stays, asked}));
  const {holdC} = reach;
  const heldAt = async (celsius: number) => {
    const {atChances} = (await outlookOf(lot, {holdC: celsius, asked})).forecast;
    const [p50 = null, p05 = null, p95 = null] = atChances.slice(1).map(instant);
    return {p05, p50, p95};
  };
  const spread = holdC === null ? null : await heldAt(holdC);
  const reserveC = holdC === null ? null : holdC + RESERVE_C;
  const units = choices.units.map(unit => ({...unit, judgement: judged(unit, limit, spread?.p50 ?? null)}));
  const mix = units.some(({judgement}) => judgement === 'in-time')
    ? null
    : await mixOf(units, wanted, desk.now / MS_PER_DAY, async heldEach => {
        const inFutures = heldEach.flatMap((_, future) =>
          [chance, 0.5].map(each => ({future, chance: each})),
        );
        return (await outlookOf(lot, {heldEach, asked: {inFutures}})).forecast.inFutures;
      });
  return {
    ...question,
    possible: reach.holdC !== null,
    holdC: reach.holdC,
    at: instant(reach.at),
    early: reach.early,
    earliest: instant(reach.earliest),
    earliestC: reach.earliestC,
    latest: instant(reach.latest),
    limits,
    asItIs: instant(forecast.atChances[0] ?? null),
    ...choices,
    spread,
    units,
    mix,
    reserve:
      reserveC === null || reserveC > limits.high
        ? null
        : {holdC: reserveC, p50: (await heldAt(reserveC)).p50},
    agesAlike: lot.cohorts.every(({ages, progress: [from, to]}) => ages === 'one-brood' || from === to),
  };
}

function instant(days: number | null): Instant | null {
  return days === null ? null : days * MS_PER_DAY;
}

/** A part of the lot is kept so much warmer, in case. Common practice, no source. */
const RESERVE_C = 2;
/** Adults so much older than need be are old or dead when they are wanted. Common practice, no source. */
const EARLY_DAYS = 2;

function judged({at, p50}: UnitChoice, limit: Instant, planned: Instant | null): Judgement {
  if (at === null || at > limit) return 'late';
  if (p50 === null || planned === null) return 'in-time';
  return p50 < planned - EARLY_DAYS * MS_PER_DAY ? 'early' : 'in-time';
}

/** So many days of change are tried between the first and the last; between two of them the sum of warmth is straight. */
const CHANGES = 16;

/**
 * The coolest unit that is too early, then the warmest that is too late, with the change on the day that brings the
 * share out in time.
 * @param outAtEach for each: when the share is out, and when half
 */
async function mixOf(
  units: readonly JudgedUnit[],
  wanted: number,
  nowDays: number,
  outAtEach: (held: readonly Held[]) => Promise<readonly (number | null)[]>,
): Promise<UnitMix | null> {
  const byWarmth = [...units].sort((a, b) => a.expectedC - b.expectedC);
  const warm = byWarmth.find(({judgement}) => judgement === 'early');
  const cool = byWarmth.findLast(({judgement}) => judgement === 'late');
  if (warm === undefined || cool === undefined || cool.expectedC >= warm.expectedC) return null;
  const change = (afterDays: number) => ({firstC: warm.expectedC, afterDays, thenC: cool.expectedC});
  const step = (wanted - nowDays) / CHANGES;
  const tried = Array.from({length: CHANGES + 1}, (_, i) => i * step);
  const out = (await outAtEach(tried.map(change))).filter((_, i) => i % 2 === 0);
  const after = out.findIndex(at => beyond(at) <= wanted + CLOSE_DAYS);
  if (after < 0) return null;
  const [late, soon] = [out[after - 1] ?? null, out[after] ?? null];
  const along = late === null || soon === null ? 0 : (late - wanted) / (late - soon);
  const days = after === 0 ? 0 : tried[after - 1]! + (late === null ? 1 : Math.min(1, along)) * step;
  const [at = null, p50 = null] = await outAtEach([change(days)]);
  return {
    first: {unit: warm.unit, celsius: warm.expectedC, days},
    afterwards: {unit: cool.unit, celsius: cool.expectedC},
    at: instant(at),
    p50: instant(p50),
  };
}

function refuseSenseless(
  {adultsBy, byInstant = Infinity, share}: PlanQuestion,
  {code, closed}: Lot,
  {civil, now}: Desk,
): void {
  if (closed !== undefined) throw new Refusal(`${code} is closed`, 'plan', 'Name a lot that goes on.');
  if (!(share > 0 && share < 1))
    throw new Refusal(`${share} is no share of the animals`, '--share', 'Write one between 0 and 1: 0.5.');
  if (adultsBy < civil.dayOf(now) || byInstant <= now)
    throw new Refusal(`${adultsBy} is past`, '--adults-by', 'Name today or a day to come.');
}

interface Reach {
  readonly holdC: number | null;
  readonly at: number | null;
  readonly early: boolean;
  readonly earliest: number | null;
  readonly earliestC: number | null;
  readonly latest: number | null;
}

type Attempt = {readonly holdC: number; readonly at: number | null};

/**
 * The lowest temperature at which the share is out in time. One forecast through a scale of temperatures finds where
 * to look; what is answered is forecast for itself. Warmer is sooner up to where a rate turns.
 */
async function reachOf(
  {low, high}: Limits,
  wanted: number,
  nowDays: number,
  outAtEach: (temperaturesC: readonly number[]) => Promise<readonly (number | null)[]>,
  outAt: (holdC: number) => Promise<number | null>,
): Promise<Reach> {
  const temperatures = Array.from({length: STEPS + 1}, (_, step) => low + ((high - low) * step) / STEPS);
  const about = await outAtEach(temperatures);
  const scale = temperatures.map((holdC, i): Attempt => ({holdC, at: about[i] ?? null}));
  const attempt = async (holdC: number): Promise<Attempt> => ({holdC, at: await outAt(holdC)});
  const coolest = await attempt(low);
  const warmest = await attempt([...scale].sort((a, b) => beyond(a.at) - beyond(b.at))[0]!.holdC);
  const found = {
    earliest: warmest.at,
    earliestC: warmest.at === null ? null : warmest.holdC,
    latest: coolest.at,
  };
  if (beyond(coolest.at) <= wanted + CLOSE_DAYS)
    return {...found, holdC: low, at: coolest.at, early: beyond(coolest.at) < wanted - CLOSE_DAYS};
  if (beyond(warmest.at) > wanted + CLOSE_DAYS) return {...found, holdC: null, at: null, early: false};

  const after = Math.max(
    1,
    scale.findIndex(({at}) => beyond(at) <= wanted),
  );
  let best = warmest;
  // How much later it really is than the scale says.
  let later = 0;
  for (let i = 0; i < MOST_ATTEMPTS; i++) {
    const holdC = whereItMeets(scale[after - 1]!, scale[after]!, wanted - later, nowDays);
    const tried = await attempt(Math.min(high, Math.max(low, holdC)));
    if (beyond(tried.at) <= wanted + CLOSE_DAYS) best = tried;
    if (Math.abs(beyond(tried.at) - wanted) < CLOSE_DAYS) break;
    later += beyond(tried.at) - wanted;
  }
  return {...found, holdC: best.holdC, at: best.at, early: false};
}

/** The temperature at which the share is out at an instant, speed taken for straight between two temperatures. */
function whereItMeets(cool: Attempt, warm: Attempt, wanted: number, nowDays: number): number {
  const speed = (at: number | null) => (at === null ? 0 : 1 / Math.max(0.01, at - nowDays));
  const along = (speed(wanted) - speed(cool.at)) / (speed(warm.at) - speed(cool.at));
  return cool.holdC + (Number.isFinite(along) ? along : 1) * (warm.holdC - cool.holdC);
}

const beyond = (at: number | null): number => at ?? Number.POSITIVE_INFINITY;
