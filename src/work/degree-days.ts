// Degree-days of a logger file, or of one day's extremes, day by day.
import {civilIn} from '../exchange/civil.ts';
import type {ExtremesFile, LoggerFile, ReadingsFile} from '../exchange/logger-file/logger-file.ts';
import {convert, convertAll} from '../exchange/temperature-unit.ts';
import type {Civil, Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {type DailyMethod, degreeDaysOfDay} from '../thermal/daily.ts';
import type {Cutoff} from '../thermal/degree-day.ts';
import {degreeDay, thresholdsFault} from '../thermal/degree-day.ts';
import {type DailyExtremes, degreeDaysByDay, extremesByDay} from '../thermal/degree-days.ts';
import {dosesBetween} from '../thermal/dose.ts';
import type {TemperatureTrace} from '../thermal/trace.ts';

/** `trace` integrates readings joined by straight lines; the others use each day's lowest and highest. */
export type DegreeDayMethod = 'trace' | DailyMethod;

/** What to compute. Thresholds and sums are in `unit`. */
export interface DegreeDayWishes {
  readonly lower: number;
  readonly upper?: number | undefined;
  readonly cutoff: Cutoff;
  readonly unit: 'C' | 'F';
  /** Default: `trace` for readings, `sine` for extremes. */
  readonly method?: DegreeDayMethod | undefined;
  /** Inclusive: only readings stamped within these days count. */
  readonly from?: Day | undefined;
  readonly to?: Day | undefined;
  /** A longer pause between readings is a gap. */
  readonly maxGapHours: number;
}

export interface DegreeDaysOfDay {
  /** Null for extremes of a day that was not named. */
  readonly day: Day | null;
  readonly degreeDays: number;
  readonly cumulative: number;
  /** Share of the day for which the temperature is known. */
  readonly coverage: number;
}

/** As `teneral degree-days` answers. */
export interface DegreeDaysAnswer {
  readonly method: DegreeDayMethod;
  readonly cutoff: Cutoff;
  readonly unit: 'C' | 'F';
  readonly lower: number;
  readonly upper: number | null;
  readonly total: number;
  /** First and last reading that counts, or first and last day of extremes. */
  readonly from: string | null;
  readonly to: string | null;
  /** Share of the time between them that lies in no gap; of extremes, of the days. */
  readonly coverage: number;
  readonly gapHours: number;
  /** Days with a reading, or that a line between readings crosses. */
  readonly days: readonly DegreeDaysOfDay[];
}

/** @throws Refusal where thresholds, method and file do not go together, or nothing lies in the days asked for */
export function degreeDaysOfFile(file: LoggerFile, wishes: DegreeDayWishes): DegreeDaysAnswer {
  const {method = file.kind === 'readings' ? 'trace' : 'sine'} = wishes;
  assertSound(method, wishes);
  if (file.kind === 'readings') return ofReadings(file, method, wishes);
  if (method === 'trace') throw noTrace(file.file);
  return ofExtremes(file, method, wishes);
}

/**
 * One day from its extremes, in `unit`.
 * @param nextMinimum of the day after, used by the double methods; default the day's own
 * @throws Refusal where the numbers do not go together
 */
export function degreeDaysOfOneDay(
  minimum: number,
  maximum: number,
  nextMinimum: number | undefined,
  wishes: DegreeDayWishes,
): DegreeDaysAnswer {
  const {method = 'sine', lower, upper, cutoff} = wishes;
  assertSound(method, wishes);
  if (method === 'trace') throw noTrace('--extremes');
  if (minimum > maximum)
    throw new Refusal(
      `the minimum ${minimum} is above the maximum ${maximum}`,
      '--extremes',
      'Give the minimum first, then the maximum.',
    );
  const degreeDays = degreeDaysOfDay(method, {minimum, maximum, nextMinimum}, {lower, upper, cutoff});
  return answer(method, wishes, [{day: null, degreeDays, coverage: 1}], {
    from: null,
    to: null,
    coverage: 1,
    gapHours: 0,
  });
}

function ofReadings(file: ReadingsFile, method: DegreeDayMethod, wishes: DegreeDayWishes): DegreeDaysAnswer {
  const civil = civilIn(file.zone);
  const [first, last] = within(file, civil, wishes);
  const at = file.at.subarray(first, last);
  const trace: TemperatureTrace = {
    atDays: at.map(ms => ms / MS_PER_DAY),
    temperatureC: convertAll(file.temperature.subarray(first, last), file.layout.unit, wishes.unit),
    maxGapDays: wishes.maxGapHours / 24,
  };
  const days = daysFrom(civil.dayOf(at[0]!), civil.dayOf(at.at(-1)!), civil);
  const bounds = boundsOf(days, civil);
  const {lower, upper, cutoff} = wishes;
  const model = degreeDay({kind: 'degree-day', lower, upper, cutoff, degreeDays: 1});
  const {dose, coveredDays, gapDays} = dosesBetween(trace, model, bounds);
  const sums =
    method === 'trace' ? dose : degreeDaysByDay(method, extremesByDay(trace, bounds), {lower, upper, cutoff});
  const covered = sum(coveredDays);
  const gap = sum(gapDays);
  const rows = days.map((day, i) => ({
    day,
    degreeDays: sums[i]!,
    coverage: coveredDays[i]! / (bounds[i + 1]! - bounds[i]!),
  }));
  return answer(method, wishes, rows, {
    from: civil.iso(at[0]!),
    to: civil.iso(at.at(-1)!),
    coverage: covered === 0 ? 0 : covered / (covered + gap),
    gapHours: gap * 24,
  });
}

function ofExtremes(file: ExtremesFile, method: DailyMethod, wishes: DegreeDayWishes): DegreeDaysAnswer {
  const {lower, upper, cutoff, unit, from = '', to = '9999-12-31'} = wishes;
  const given = file.days.filter(({day}) => day >= from && day <= to);
  if (given.length === 0) throw nothingWithin(file.file, file.days[0]!.day, file.days.at(-1)!.day);
  const days = daysFrom(given[0]!.day, given.at(-1)!.day, civilIn(file.zone));
  const byDay = new Map(given.map(extremes => [extremes.day, extremes]));
  const column = (which: 'minimum' | 'maximum') =>
    Float64Array.from(days, day => convert(byDay.get(day)?.[which] ?? Number.NaN, file.layout.unit, unit));
  const extremes: DailyExtremes = {minimum: column('minimum'), maximum: column('maximum')};
  const sums = degreeDaysByDay(method, extremes, {lower, upper, cutoff});
  return answer(
    method,
    wishes,
    days.map((day, i) => ({day, degreeDays: sums[i]!, coverage: 1})),
    {
      from: days[0]!,
      to: days.at(-1)!,
      coverage: given.length / days.length,
      gapHours: (days.length - given.length) * 24,
    },
  );
}

/** Days of which nothing is known are left out of the rows. */
function answer(
  method: DegreeDayMethod,
  {cutoff, unit, lower, upper}: DegreeDayWishes,
  rows: readonly Omit<DegreeDaysOfDay, 'cumulative'>[],
  span: Pick<DegreeDaysAnswer, 'from' | 'to' | 'coverage' | 'gapHours'>,
): DegreeDaysAnswer {
  let cumulative = 0;
  const days = rows
    .filter(({degreeDays}) => !Number.isNaN(degreeDays))
    .map(row => {
      cumulative += row.degreeDays;
      return {day: row.day, degreeDays: row.degreeDays, cumulative, coverage: row.coverage};
    });
  return {method, cutoff, unit, lower, upper: upper ?? null, total: cumulative, ...span, days};
}

/** The readings stamped within the days asked for, as a range of rows. */
function within(file: ReadingsFile, civil: Civil, {from, to}: DegreeDayWishes): readonly [number, number] {
  const {at} = file;
  const first = from === undefined ? 0 : firstNotBefore(at, civil.at(from, '00:00'));
  const last = to === undefined ? at.length : firstNotBefore(at, civil.at(civil.addDays(to, 1), '00:00'));
  if (first >= last) throw nothingWithin(file.file, civil.dayOf(at[0]!), civil.dayOf(at.at(-1)!));
  return [first, last];
}

function firstNotBefore(at: Float64Array, instant: Instant): number {
  const index = at.findIndex(reading => reading >= instant);
  return index < 0 ? at.length : index;
}

function daysFrom(first: Day, last: Day, civil: Civil): Day[] {
  const days: Day[] = [];
  for (let day = first; day <= last; day = civil.addDays(day, 1)) days.push(day);
  return days;
}

/** Where the days begin, and where the last one ends, in days since 1970. */
function boundsOf(days: readonly Day[], civil: Civil): Float64Array {
  const ends = [...days, civil.addDays(days.at(-1)!, 1)];
  return Float64Array.from(ends, day => civil.at(day, '00:00') / MS_PER_DAY);
}

function sum(values: Float64Array): number {
  return values.reduce((total, value) => total + value, 0);
}

function assertSound(
  method: DegreeDayMethod,
  {lower, upper, cutoff, from, to, maxGapHours}: DegreeDayWishes,
): void {
  const fault = thresholdsFault({lower, upper});
  if (fault !== undefined)
    throw new Refusal(
      `the ${fault.field} threshold ${fault.what}`,
      '--lower, --upper',
      'Give two temperatures, the lower one first.',
    );
  if (method === 'average' && cutoff !== 'horizontal')
    throw new Refusal(
      `the average method has no ${cutoff} cutoff`,
      '--cutoff',
      'Use --cutoff horizontal, or another method such as --method sine.',
    );
  if (!(maxGapHours > 0))
    throw new Refusal(
      `a pause of ${maxGapHours} hours is none`,
      '--max-gap',
      'Give hours above 0, such as 3.',
    );
  if (from !== undefined && to !== undefined && from > to)
    throw new Refusal(`${from} lies after ${to}`, '--from, --to', 'Give the first day, then the last.');
}

function noTrace(where: string): Refusal {
  return new Refusal(
    'a day’s minimum and maximum make no trace',
    where,
    'Use --method sine, double-sine, triangle, double-triangle or average.',
  );
}

function nothingWithin(file: string, first: Day, last: Day): Refusal {
  return new Refusal(
    'nothing was read within the days asked for',
    file,
    `The file runs from ${first} to ${last}; choose --from and --to within them.`,
  );
}
