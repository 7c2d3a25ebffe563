// Days of extremes from a logger's file, as records: each from one midnight of the room to the next.
import type {ExtremesFile} from '../exchange/logger-file/logger-file.ts';
import {convert} from '../exchange/temperature-unit.ts';
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';

export interface DaySpan {
  readonly day: Day;
  readonly row: number;
  readonly from: Instant;
  readonly to: Instant;
  readonly minimumC: number;
  readonly maximumC: number;
}

export function daySpans({days, layout: {unit}}: ExtremesFile, civil: Civil): DaySpan[] {
  return days.map(({day, row, minimum, maximum}) => ({
    day,
    row,
    from: civil.at(day, '00:00'),
    to: civil.at(civil.addDays(day, 1), '00:00'),
    minimumC: convert(minimum, unit, 'C'),
    maximumC: convert(maximum, unit, 'C'),
  }));
}

/** The record of a day; its key makes it count once, however often the file comes. */
export function recordOfDay(logger: string, {from, to, minimumC, maximumC}: DaySpan, civil: Civil) {
  return {
    record: 'extremes',
    key: keyOfDay(logger, {from, to}, civil),
    logger,
    from: civil.iso(from),
    to: civil.iso(to),
    minimum: minimumC,
    maximum: maximumC,
  };
}

export function keyOfDay(logger: string, {from, to}: {from: Instant; to: Instant}, civil: Civil): string {
  return `import ${logger} ${civil.iso(from)} ${civil.iso(to)}`;
}
