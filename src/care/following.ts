// A job followed from one time to the next, as if it were always done when it is planned.
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Job} from './job.ts';
import {openMoment} from './open-moment.ts';
import type {CareInput} from './task.ts';
import type {Window} from './window.ts';

/** A stretch of time of which any instant will do. */
export interface Span {
  readonly from: Instant;
  readonly to: Instant;
}

/** When somebody has to come for something. */
export interface Coming extends Span {
  /** It may be done with something else from then on, but may then have to be done once more. */
  readonly soonest: Instant;
}

/** One time to come. */
export interface Turn {
  readonly window: Window;
  /** When it will be done: in open time, else on the visit that it forces. */
  readonly at: Instant;
  /** The visit on closed time that it forces. */
  readonly visit?: Coming | undefined;
  /** No round is in time, but the room is open for it: somebody has to come back then. */
  readonly back?: Coming | undefined;
}

/** When a job was last done, or will have been: at one instant, or at any of a span. `at` is the likeliest. */
export interface LastTime extends Span {
  readonly at: Instant;
}

/** Nobody has to come within a shorter time than this to save another coming; nor than so much of a short window. */
const SHORTEST_SPAN_MS = MS_PER_HOUR;
const ENOUGH_SHARE = 1 / 4;
/** One time after the other finds room where each takes no more of its window. */
const MOST_SHARE = 1 / 2;

/** Nothing is done more often than this before the horizon; a rule that asks for more is not followed further. */
export const MOST_TURNS = 400;

/**
 * The coming times of a job up to the horizon, in order. A forced visit is taken to be made about noon of its last day.
 * @param next where the next time is planned for another moment than the rule alone would have it
 */
export function* turnsOf(
  job: Job,
  open: OpenTime,
  input: CareInput,
  horizon: Instant,
  next?: Instant | undefined,
): Generator<Turn> {
  let last = lastTime(job, input);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const coming = turnAfter(last, job, open, input, horizon, turn === 0 ? next : undefined);
    if (coming === undefined) return;
    yield coming;
    last = doneOn(coming);
  }
}

/** When a job was really done last; undefined when it never was. */
export function lastTime(job: Job, {now}: CareInput): LastTime | undefined {
  const at = job.lastDone(now);
  return at === undefined ? undefined : {from: at, to: at, at};
}

/** When a job will have been done that was done on a turn. */
function doneOn({at, visit, back}: Turn): LastTime {
  const {from, to} = visit ?? back ?? {from: at, to: at};
  return {from, to, at};
}

/**
 * The time after the last one; undefined where none is wanted up to the horizon.
 * @param moment where it is planned for another moment than the rule alone would have it
 */
export function turnAfter(
  last: LastTime | undefined,
  job: Job,
  open: OpenTime,
  input: CareInput,
  horizon: Instant,
  moment?: Instant | undefined,
): Turn | undefined {
  const window = windowAfter(last, job, open);
  if (window === null || window.target > horizon) return undefined;
  const turn = moment === undefined ? turnIn(window, open, input, horizon) : {window, at: moment};
  if (last === undefined || turn.at > last.at) return turn.at > horizon ? undefined : turn;
  // What may be done again at once is not planned for at once, but for when half of its time has passed.
  const halfWay = (last.to + window.target) / 2;
  if (halfWay <= last.to) return undefined;
  const later = turnIn({...window, earliest: halfWay}, open, input, horizon);
  return later.at > horizon || later.at <= last.at ? undefined : later;
}

/**
 * What was done at any instant of a span is in time again only where it is for whoever came first, and not too soon
 * only where it is not for whoever came last. The next round asks anew.
 */
function windowAfter(last: LastTime | undefined, job: Job, open: OpenTime): Window | null {
  const likely = job.windowAfter(last?.at);
  if (last === undefined || likely === null || last.from === last.to) return likely;
  const sooner = job.windowAfter(last.from);
  if (sooner === null || sooner.latest >= (open.nextRound(last.to) ?? sooner.latest)) return likely;
  const {latest} = sooner;
  const earliest = Math.min(job.windowAfter(last.to)?.earliest ?? latest, latest);
  return {since: likely.since, earliest, target: Math.max(earliest, Math.min(likely.target, latest)), latest};
}

/** When it will be done: as planned, or as soon as there is somebody where that has passed. */
function turnIn(window: Window, open: OpenTime, input: CareInput, horizon: Instant): Turn {
  const {now, civil} = input;
  const {earliest, latest} = window;
  const planned = openMoment(window, open, civil);
  const back = planned === null || latest < now ? undefined : backFor(window, open, input);
  if (back !== undefined) return {window, at: back.to, back};
  const soonest = soonestMoment(now, open) ?? horizon;
  if (planned !== null && planned >= soonest) return {window, at: planned};
  if (now > latest || (planned !== null && latest >= soonest))
    return {window, at: Math.max(soonest, earliest)};
  const visit = visitFor(window, open, now);
  return {window, at: aboutNoon(visit, civil), visit};
}

/** A round takes so long: what is done within it is taken to be done when it began. */
const ROUND_MS = 2 * MS_PER_HOUR;

/** When somebody does what is to be done now: in the round that goes on, else this hour, else at the next round. */
function soonestMoment(now: Instant, open: OpenTime): Instant | null {
  let known = soonestKnown.get(open);
  if (known?.now !== now) {
    known = {now, moment: soonestOf(now, open)};
    soonestKnown.set(open, known);
  }
  return known.moment;
}

/** Every job asks for the same. */
const soonestKnown = new WeakMap<OpenTime, {readonly now: Instant; readonly moment: Instant | null}>();

function soonestOf(now: Instant, open: OpenTime): Instant | null {
  if (!open.isOpenAt(now)) return open.nextRound(now);
  const round = open.previousRound(now);
  return round !== null && now - round <= ROUND_MS ? round : now - (now % MS_PER_HOUR);
}

/** A visit that may be made at any instant of a span is taken to be made about noon of its last day. */
export function aboutNoon({from, to}: Span, civil: Civil): Instant {
  return Math.min(to, Math.max(from, civil.at(civil.dayOf(to - 1), '12:00')));
}

/**
 * When to come back to the open room for what no round is in time for; undefined where one is, and where the room is
 * not open any more. As late as it can be, and late enough that the next round is in time again where that can be.
 */
function backFor(window: Window, open: OpenTime, {now}: CareInput): Coming | undefined {
  const {since, earliest, latest} = window;
  const opening = open.previousOpening(latest);
  if (opening === null || opening.from >= earliest) return undefined;
  // It stands on the list of the round that began before, and can be done at its end.
  const isOnRound = since < opening.from && earliest - opening.from <= ROUND_MS;
  if (isOnRound && earliest < opening.to) return undefined;
  const to = Math.min(latest, opening.to);
  if (to < now || to < earliest) return undefined;
  return spanBefore(to, earliest, window, open);
}

/** A visit is wanted by the limit. */
function visitFor(window: Window, open: OpenTime, now: Instant): Coming {
  const soonest = Math.max(window.earliest, now - (now % MS_PER_HOUR));
  return spanBefore(window.latest, soonest, window, open);
}

/**
 * The time up to `to` that is as good, with the next round in time again, after as few more comings as can be: what they
 * have to spare is shared among them. Where that leaves too little for each, one more has to come.
 */
function spanBefore(to: Instant, soonest: Instant, window: Window, open: OpenTime): Coming {
  const {since, earliest, latest} = window;
  const limit = latest - since;
  const room = latest - earliest;
  const round = open.nextRound(to + 1) ?? to;
  const enough = Math.min(SHORTEST_SPAN_MS, ENOUGH_SHARE * room);
  const spare = (comings: number) => (to + comings * limit - round) / comings;
  const fewest = Math.max(1, Math.ceil((round - to) / limit));
  const comings = spare(fewest) >= enough ? fewest : fewest + 1;
  const width = comings === 1 ? spare(1) : Math.min(spare(comings), MOST_SHARE * room);
  return {soonest, from: Math.max(soonest, to - width), to};
}
