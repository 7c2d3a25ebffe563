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

const EPOCH_SECONDS = /^\d{9,10}(\.\d+)?$/;
const EPOCH_MS = /^\d{12,13}$/;

/** 1998 to 2100: no other column of a logger holds numbers like these in every row. */
export function isEpochMs(ms: number): boolean {
  return ms >= 9e11 && ms < 4.1e12;
}

/** The instant that a row's time columns hold. */
export function timeIn(cells: readonly string[], time: TimeColumns, form: DateForm): WrittenTime | undefined {
  switch (time.kind) {
    case 'instant':
      return readDateTime(cells[time.column] ?? '', form);
    case 'date-and-clock':
      return readDateAndClock(cells[time.date] ?? '', cells[time.clock] ?? '', form);
    case 'epoch': {
      const wall = readEpoch(cells[time.column] ?? '', time.unitMs);
      return wall === undefined ? undefined : {wall, offsetMs: 0};
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

function epochOf(cells: readonly string[]): TimeColumns | undefined {
  for (const unitMs of [1000, 1] as const) {
    const column = cells.findIndex(cell => readEpoch(cell, unitMs) !== undefined);
    if (column >= 0) return {kind: 'epoch', column, unitMs};
  }
  return undefined;
}

function readEpoch(cell: string, unitMs: 1 | 1000): number | undefined {
  if (!(unitMs === 1 ? EPOCH_MS : EPOCH_SECONDS).test(cell)) return undefined;
  const ms = Math.round(Number(cell) * unitMs);
  return isEpochMs(ms) ? ms : undefined;
}
