// What a logger said, reading by reading, and which of it is doubted.

import type {Doubt, LoggerPlace} from '../climate/doubt.ts';
import {doubtRules} from '../climate/doubt-rules.ts';
import {doubtsOf} from '../climate/doubts.ts';
import {isMasked, isTrusted} from '../climate/masked.ts';
import type {Series} from '../climate/series.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import {type Logger, type Mask, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';

/** How a doubted span stands: left out of the course, to be looked at, masked or trusted by a person. */
export type DoubtState = 'set-aside' | 'look' | 'masked' | 'trusted';

/** As `teneral readings LOGGER --doubts` answers. */
export interface DoubtRow {
  readonly rule: Doubt['rule'];
  readonly from: string;
  readonly to: string;
  readonly readings: number;
  readonly what: string;
  readonly state: DoubtState;
}

export interface ReadingRow {
  readonly at: string;
  readonly temperature: number | null;
  readonly humidity: number | null;
  /** `read` counts in the course; the others do not. */
  readonly state: 'read' | 'masked' | 'set-aside';
  /** The rule that doubts it. */
  readonly rule: Doubt['rule'] | null;
}

export interface LoggerReadings {
  readonly logger: Logger;
  readonly series: Series;
  readonly masks: readonly Mask[];
  readonly doubts: readonly Doubt[];
}

/** What is judged by the days around needs them: so many are read before and after. */
const AROUND_DAYS = 5;

/** @throws Refusal where there is no such logger */
export async function loggerReadings(
  desk: Desk,
  code: string,
  fromDays: number,
  toDays: number,
): Promise<LoggerReadings> {
  const {state, room} = desk;
  const logger = loggerNamed(desk, code);
  const series = await room.series(code, fromDays - AROUND_DAYS, toDays + AROUND_DAYS);
  const doubts = doubtsOf(series, placeOf(code, desk), logger.rules);
  const [first, end] = [rowFrom(series, fromDays), rowFrom(series, toDays)];
  return {
    logger,
    series: cut(series, first, end),
    masks: state.masks.filter(mask => mask.logger === code),
    doubts: doubts
      .filter(doubt => doubt.last >= first && doubt.first < end)
      .map(doubt => ({
        ...doubt,
        first: Math.max(doubt.first, first) - first,
        last: Math.min(doubt.last, end - 1) - first,
      })),
  };
}

/** @throws Refusal where there is no such logger */
export function loggerNamed({state, now}: Desk, code: string): Logger {
  const history = state.loggers.get(code);
  if (history !== undefined) return valueAt(history, now);
  const close = nearest(code, state.loggers.keys());
  throw new Refusal(
    `there is no logger "${code}"`,
    'logger',
    `${close === undefined ? '' : `Did you mean ${close}? `}teneral list loggers shows those there are.`,
  );
}

export function doubtRows({doubts, series, masks}: LoggerReadings, {civil}: Desk): DoubtRow[] {
  return doubts.map(({rule, first, last, what}) => {
    const [from, to] = [first, last].map(row => instantAt(series, row)) as [Instant, Instant];
    return {
      rule,
      from: civil.iso(from),
      to: civil.iso(to),
      readings: last - first + 1,
      what,
      state: isTrusted(masks, from)
        ? 'trusted'
        : isMasked(masks, from)
          ? 'masked'
          : doubtRules[rule].consequence,
    };
  });
}

export function readingRows({doubts, series, masks}: LoggerReadings, {civil}: Desk): ReadingRow[] {
  const ruleOf = new Map<number, Doubt['rule']>();
  for (const {rule, first, last} of doubts)
    for (let row = first; row <= last; row++) if (!ruleOf.has(row)) ruleOf.set(row, rule);
  const known = (value: number | undefined) => (value === undefined || Number.isNaN(value) ? null : value);
  return Array.from(series.atDays, (_, row) => {
    const at = instantAt(series, row);
    const rule = ruleOf.get(row) ?? null;
    const isAside = rule !== null && doubtRules[rule].consequence === 'set-aside' && !isTrusted(masks, at);
    return {
      at: civil.iso(at),
      temperature: known(series.temperatureC[row]),
      humidity: known(series.rhPercent[row]),
      state: isMasked(masks, at) ? 'masked' : isAside ? 'set-aside' : 'read',
      rule,
    };
  });
}

/** It hangs in water where a unit that it stands for is an aquarium now. */
function placeOf(code: string, {state, civil, now}: Desk): LoggerPlace {
  const units = [...state.units.values()].map(history => valueAt(history, now));
  return {
    inWater: units.some(({logger, type}) => logger === code && type === 'aquarium'),
    hourOf: atDays => {
      const at = atDays * MS_PER_DAY;
      return (at - civil.at(civil.dayOf(at), '00:00')) / MS_PER_HOUR;
    },
  };
}

function instantAt({atDays}: Series, row: number): Instant {
  return Math.round(atDays[row]! * MS_PER_DAY);
}

function rowFrom({atDays}: Series, days: number): number {
  const row = atDays.findIndex(at => at >= days);
  return row < 0 ? atDays.length : row;
}

function cut({atDays, temperatureC, rhPercent}: Series, from: number, to: number): Series {
  return {
    atDays: atDays.subarray(from, to),
    temperatureC: temperatureC.subarray(from, to),
    rhPercent: rhPercent.subarray(from, to),
  };
}

const RECENT_DAYS = 60;

/** What is doubted of the last two months, the newest first. @throws Refusal where there is no such logger */
export async function recentDoubts(desk: Desk, code: string): Promise<DoubtRow[]> {
  const nowDays = desk.now / MS_PER_DAY;
  return doubtRows(await loggerReadings(desk, code, nowDays - RECENT_DAYS, nowDays), desk).reverse();
}
