// At which temperature a lot is to be held so that its adults are there by a day, and which unit would do.
import type {Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {lotOf, outlooker} from './outlook.ts';
import {profilesOf} from './profiles.ts';
import {type UnitChoices, unitsFor} from './unit-choice.ts';

export interface PlanQuestion {
  readonly lot: string;
  readonly adultsBy: Day;
  /** How many of those alive are to be out by then. */
  readonly share: number;
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
  readonly limits: {readonly low: number; readonly high: number; readonly from: string};
  /** When it is out if nothing is changed. */
  readonly asItIs: Instant | null;
}

/** Candidates that weigh less do not bind the plan. */
const MATTERS = 0.05;
/** Where no profile names limits. Common practice, no source. */
const USUAL_LIMITS = {low: 10, high: 30};
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
  const asked = {chances: [chance]};
  const {forecast} = await outlookOf(lot, {asked});
  if (forecast.status === 'unknown')
    throw new Refusal(
      `${lot.code} has no forecast to plan by`,
      'plan',
      forecast.assumptions[0] ?? 'A candidate would give one.',
    );
  const heavy = forecast.candidates.filter(({weight}) => weight >= MATTERS).map(({profile}) => profile);
  const profiles = await profilesOf(heavy, state);
  const limits = limitsOf([...profiles.values()]);
  // At noon of the day: neither in its night nor on the day after.
  const wanted = civil.at(question.adultsBy, '12:00') / MS_PER_DAY;
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
  const choices = await unitsFor(lot, desk, profiles, limits, wanted, stays =>
    outlookOf(lot, {stays, asked}),
  );
  const instant = (days: number | null) => (days === null ? null : days * MS_PER_DAY);
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
  };
}

function refuseSenseless({adultsBy, share}: PlanQuestion, {code, closed}: Lot, {civil, now}: Desk): void {
  if (closed !== undefined) throw new Refusal(`${code} is closed`, 'plan', 'Name a lot that goes on.');
  if (!(share > 0 && share < 1))
    throw new Refusal(`${share} is no share of the animals`, '--share', 'Write one between 0 and 1: 0.5.');
  if (adultsBy < civil.dayOf(now))
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
  {low, high}: HoldingPlan['limits'],
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

/** What every weighty candidate bears; where they have nothing in common, what the first bears. */
function limitsOf(profiles: readonly Profile[]): HoldingPlan['limits'] {
  const named = profiles.flatMap(({profile, limits: {temperature}}) =>
    temperature?.low === undefined || temperature.high === undefined
      ? []
      : [{profile, low: temperature.low, high: temperature.high}],
  );
  const [first] = named;
  if (first === undefined) return {...USUAL_LIMITS, from: 'common practice, no source'};
  const low = Math.max(...named.map(each => each.low));
  const high = Math.min(...named.map(each => each.high));
  if (low >= high) return {low: first.low, high: first.high, from: first.profile};
  return {low, high, from: named.map(({profile}) => profile).join(', ')};
}
