// Where a row's time stands, and reading it.
import type {TimeColumns} from './layout.ts';
import {
  type DateForm,
  type DateOrder,
  datePartsOf,
  readClock,
  readDateAndClock,
  readDateTime,
  type WrittenTime,
} from './written-time.ts';

export const dateOrders: readonly DateOrder[] = ['ymd', 'dmy', 'mdy'];

/** 1998 to 2100: no other column of a logger holds numbers like these in every row. */
const EPOCH_SECONDS = /^(9\d{8}|[1-3]\d{9}|40\d{8})(\.\d+)?$/;
const EPOCH_MS = /^(9\d{11}|[1-3]\d{12}|40\d{11})$/;

/** The instant that a row's time columns hold. */
export function timeIn(cells: readonly string[], time: TimeColumns, form: DateForm): WrittenTime | undefined {
  switch (time.kind) {
    case 'instant':
      return readDateTime(cells[time.column] ?? '', form);
    case 'date-and-clock':
      return readDateAndClock(cells[time.date] ?? '', cells[time.clock] ?? '', form);
    case 'epoch': {
      const cell = cells[time.column] ?? '';
      const isEpoch = (time.unitMs === 1 ? EPOCH_MS : EPOCH_SECONDS).test(cell);
      return isEpoch ? {wall: Math.round(Number(cell) * time.unitMs), offsetMs: 0} : undefined;
    }
  }
}

/** The forms that dates may have before their order is known. */
export function formsToTry(given: DateForm | undefined): readonly DateForm[] {
  return given === undefined ? dateOrders.map(order => ({kind: 'numeric', order})) : [given];
}

/** The columns of a row that hold its time, where some do. */
export function timeColumnsOf(cells: readonly string[], forms: readonly DateForm[]): TimeColumns | undefined {
  const instants = cells.flatMap((cell, column) => (readsAs(cell, forms) ? [column] : []));
  const withClock = instants.find(column => !isDayAlone(cells[column]!));
  if (withClock !== undefined) return {kind: 'instant', column: withClock};
  const date = instants[0];
  if (date === undefined) return formattedPairOf(cells, forms) ?? epochOf(cells);
  const clock = cells.findIndex(cell => readClock(cell) !== undefined);
  return clock < 0 ? {kind: 'instant', column: date} : {kind: 'date-and-clock', date, clock};
}

/** The kind of time that a person's columns hold, from a row of them. */
export function timeColumnsAt(
  cells: readonly string[],
  date: number,
  clock: number | undefined,
): TimeColumns {
  if (clock !== undefined) return {kind: 'date-and-clock', date, clock};
  return epochOf(cells, date) ?? {kind: 'instant', column: date};
}

function readsAs(cell: string, forms: readonly DateForm[]): boolean {
  return forms.some(form => readDateTime(cell, form) !== undefined);
}

function isDayAlone(cell: string): boolean {
  return datePartsOf(cell)?.rest === '';
}

/** A format may describe a date and a time that stand in neighbouring columns. */
function formattedPairOf(cells: readonly string[], forms: readonly DateForm[]): TimeColumns | undefined {
  const form = forms.find(({kind}) => kind === 'format');
  if (form === undefined) return undefined;
  const date = cells.findIndex((cell, i) => readDateAndClock(cell, cells[i + 1] ?? '', form) !== undefined);
  return date < 0 ? undefined : {kind: 'date-and-clock', date, clock: date + 1};
}

function epochOf(cells: readonly string[], only?: number): TimeColumns | undefined {
  const fits = (pattern: RegExp) =>
    cells.findIndex((cell, column) => (only === undefined || column === only) && pattern.test(cell));
  const seconds = fits(EPOCH_SECONDS);
  if (seconds >= 0) return {kind: 'epoch', column: seconds, unitMs: 1000};
  const ms = fits(EPOCH_MS);
  return ms < 0 ? undefined : {kind: 'epoch', column: ms, unitMs: 1};
}
