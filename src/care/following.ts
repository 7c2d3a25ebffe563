// A job followed from one time to the next, as if it were always done when it is planned.
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import type {OpenTime} from './calendar.ts';
import type {Job} from './job.ts';
import {openMoment} from './open-moment.ts';
import type {CareInput} from './task.ts';
import type {Window} from './window.ts';

/** One time to come. */
export interface Turn {
  readonly window: Window;
  /** When it will be done: in open time, else on the visit that it forces. */
  readonly at: Instant;
  /** The visit on closed time that it forces; any instant of it will do. */
  readonly visit?: {readonly from: Instant; readonly to: Instant} | undefined;
}

/** Nobody comes within a shorter time than this. */
const SHORTEST_VISIT_MS = 6 * MS_PER_HOUR;
/** Nothing is done more often than this before the horizon; a rule that asks for more is not followed further. */
const MOST_TURNS = 400;

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
  const {now, civil} = input;
  let last = job.lastDone(now);
  for (let turn = 0; turn < MOST_TURNS; turn++) {
    const window = job.windowAfter(last);
    if (window === null || window.target > horizon) return;
    const soonest = soonestMoment(now, open) ?? horizon;
    const moment = turn === 0 && next !== undefined ? next : momentFor(window, soonest, open, input);
    const visit = moment === null ? visitFor(window, open, now) : undefined;
    const at = moment ?? aboutNoon(visit!, civil);
    if (at > horizon || (last !== undefined && at <= last)) return;
    yield {window, at, visit};
    last = at;
  }
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

function aboutNoon({from, to}: {from: Instant; to: Instant}, civil: Civil): Instant {
  return Math.min(to, Math.max(from, civil.at(civil.dayOf(to - 1), '12:00')));
}

/** A visit is wanted late enough that the next round is in time again, where that leaves some hours for it. */
function visitFor({earliest, latest, since}: Window, open: OpenTime, now: Instant) {
  const soonest = Math.max(earliest, now - (now % MS_PER_HOUR));
  const safe = (open.nextRound(latest) ?? latest) - (latest - since);
  return {from: safe > soonest && latest - safe >= SHORTEST_VISIT_MS ? safe : soonest, to: latest};
}

/** When it will be done: as planned, or as soon as there is somebody where that has passed. Null: not in time. */
function momentFor(
  window: Window,
  soonest: Instant,
  open: OpenTime,
  {civil, now}: CareInput,
): Instant | null {
  const planned = openMoment(window, open, civil);
  if (planned !== null && planned >= soonest) return planned;
  if (now <= window.latest && (planned === null || window.latest < soonest)) return null;
  return Math.max(soonest, window.earliest);
}
