// When to look for adults: planned from the forecast, by the rule's interval where there is none.
import {SOONEST_SHARE} from '../development/checks.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Lot, Rule} from '../records/state.ts';
import type {OpenTime} from './calendar.ts';
import type {Deed, Ledger} from './ledger.ts';
import {mayEmerge, since, stagesOf} from './stages.ts';
import type {UnitType} from './start-rule.ts';
import type {EmergenceOutlook} from './task.ts';
import {type Clock, type Window, windowOf} from './window.ts';

/** Once an adult is out, daily looks go on for so long after the last one. Common practice, no source. */
const DAILY_AFTER_ADULT_DAYS = 14;
/** The first look may not be later than this before one in twenty animals is out. */
const SHORTEST_LEAD_DAYS = 1;

export interface LookCase {
  readonly lot: Lot;
  readonly type: UnitType;
  readonly outlook: EmergenceOutlook | undefined;
  /** How long an adult may wait unseen. */
  readonly holdHours: number;
  readonly last: Instant | undefined;
  readonly lots: ReadonlyMap<string, Lot>;
}

/** When the next look is wanted; null where no adult can be near. */
export function lookWindow(rule: Rule, each: LookCase, open: OpenTime, clock: Clock): Window | null {
  const {outlook, lot} = each;
  if (outlook === undefined) return byInterval(rule, each, clock);
  const {startChecking, nextCheck} = outlook;
  if (startChecking === null && nextCheck === null)
    return isHidden(lot) ? byInterval(rule, each, clock) : null;
  return byForecast(each, outlook, open);
}

function byForecast(
  {lot, last, holdHours}: LookCase,
  {startChecking, nextCheck, p05}: EmergenceOutlook,
  open: OpenTime,
): Window | null {
  const begins = Math.round(startChecking ?? nextCheck!);
  // The last look may have been at the lot that its animals come from.
  if (last === undefined || last < begins) {
    const start = Math.max(begins, lot.startedAt);
    const latest = p05 === null ? start : Math.max(start, Math.round(p05) - SHORTEST_LEAD_DAYS * MS_PER_DAY);
    return {since: last ?? lot.startedAt, earliest: start, target: start, latest};
  }
  if (nextCheck === null) return null;
  const hold = holdHours * MS_PER_HOUR;
  const within = momentWithin(roundLooked(last, open), hold, open);
  const target = nextCheck > last ? Math.min(Math.round(nextCheck), within) : within;
  return {
    since: last,
    earliest: Math.min(target, last + hold / 2),
    target,
    latest: Math.max(target, last + hold),
  };
}

/** A look so shortly before a round was made on it. Common practice, no source. */
const BEFORE_ROUND_MS = 2 * MS_PER_HOUR;

function roundLooked(last: Instant, open: OpenTime): Instant {
  const round = open.nextRound(last);
  return round !== null && round - last <= BEFORE_ROUND_MS ? round : last;
}

/**
 * When to look next so that nobody waits longer than `hold` since a look, and looks are as few as can be: the last
 * round in time; where none is, the last moment of opening hours; else the first round after.
 */
export function momentWithin(last: Instant, hold: number, open: OpenTime): Instant {
  const round = open.previousRound(last + hold);
  if (round !== null && round > last) return round;
  const moment = open.lastMoment(last + hold);
  if (moment !== null && moment >= last + SOONEST_SHARE * hold) return moment;
  return open.nextRound(last + hold) ?? last + hold;
}

function byInterval(rule: Rule, {lot, type, last, lots}: LookCase, clock: Clock): Window | null {
  const near = isHidden(lot) || type === 'emergence-box' || stagesOf(lot).some(mayEmerge);
  if (!near) return null;
  const emerged = lot.sightings.findLast(({kind}) => kind === 'emergence')?.at;
  const from = Math.max(last ?? 0, type === 'emergence-box' ? lot.startedAt : since(lot, mayEmerge, lots));
  const daily = emerged !== undefined && from - emerged <= DAILY_AFTER_ADULT_DAYS * MS_PER_DAY;
  if (!daily) return windowOf(rule, from, lot.code, clock);
  return {
    since: from,
    earliest: clock.after(from, 0.5),
    target: clock.after(from, 1),
    latest: clock.after(from, 1.5),
  };
}

/** Every look at a lot, in order of time: the checks, complete counts and emergences too. */
export function lookDeeds(lot: Lot, ledger: Ledger): readonly Deed[] {
  const care = ledger.ofLot('look', lot);
  const seen = new Set(care.filter(({skipped}) => skipped === undefined).map(({at}) => at));
  const others = lot.looks.filter(at => !seen.has(at)).map(at => ({at, by: whoLooked(lot, at)}));
  return [...care, ...others].sort((a, b) => a.at - b.at);
}

function whoLooked(lot: Lot, at: Instant): string {
  const entry = lot.entries.find(
    ({record}) => 'at' in record && record.at !== undefined && Date.parse(record.at) === at,
  );
  return entry?.by ?? '';
}
