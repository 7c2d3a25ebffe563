// Day first or month first? Told by numbers that only one of them can be, from as much of the file as that takes.
import {eachBlock} from './blocks.ts';
import {columnsOfTime} from './layout.ts';
import {unclearDates} from './refusals.ts';
import {dateOrders} from './time-columns.ts';
import type {Draft} from './understand.ts';
import {rowAt} from './written-row.ts';
import {type DateForm, type DateOrder, type DateParts, datePartsOf, dayOf} from './written-time.ts';

/**
 * How the file writes its dates.
 * @param chunks the whole file; read only as far as needed, and only where the first rows leave a doubt
 * @param usual the order in which the logger's files have them, where this one leaves it open
 * @throws Refusal where neither decides it
 */
export function dateFormOf(
  draft: Draft,
  chunks: Iterable<Uint8Array>,
  file: string,
  decode: (bytes: Uint8Array) => string,
  usual?: DateOrder,
): DateForm {
  if (draft.time.kind === 'epoch') return {kind: 'numeric', order: 'ymd'};
  const [column = 0] = columnsOfTime(draft.time);
  const order = new OrderFinder();
  const isDecided = () => order.possible.length < 2;
  for (const {cells} of draft.readings) order.see(cells[column] ?? '');
  if (!isDecided())
    eachBlock(chunks, file, (block, final) => {
      for (let at = 0; at < block.length; ) {
        const row = rowAt(block, at, block.length, final, draft.delimiter, decode);
        if (row === undefined) return at;
        order.see(row.cells[column] ?? '');
        if (isDecided()) return undefined;
        at = row.next;
      }
      return block.length;
    });
  if (!isDecided() && usual !== undefined && order.possible.includes(usual))
    return {kind: 'numeric', order: usual};
  // Between full stops no land writes the month before the day (date patterns of Unicode's CLDR, from memory).
  if (!isDecided() && order.isDotted && order.possible.includes('dmy'))
    return {kind: 'numeric', order: 'dmy'};
  if (!isDecided()) throw unclearDates(file, draft.readings[0]?.cells[column] ?? '');
  return {kind: 'numeric', order: order.possible[0] ?? 'ymd'};
}

/** Orders are struck out one by one; a date that fits none of those left says nothing. */
class OrderFinder {
  possible: readonly DateOrder[] = dateOrders;
  /** Every date seen so far stands between full stops. */
  isDotted = true;
  #last: DateParts | undefined;

  see(cell: string): void {
    const parts = datePartsOf(cell);
    if (parts === undefined) return;
    this.isDotted &&= parts.separator === '.';
    this.#keep(order => dayOf(parts, order) !== undefined && (parts.widths[0] < 3 || order === 'ymd'));
    if (parts.widths[0] < 3 && parts.widths[2] < 3) this.#seeYear(parts);
    this.#last = parts;
  }

  /**
   * A year of two digits may stand first or, always so between full stops, last. While days pass the year stays, so
   * the end that stays has it.
   */
  #seeYear({numbers, separator}: DateParts): void {
    if (separator === '.') this.#keep(order => order !== 'ymd');
    const last = this.#last ?? {numbers};
    const firstMoved = numbers[0] !== last.numbers[0];
    const lastMoved = numbers[2] !== last.numbers[2];
    if (firstMoved !== lastMoved) this.#keep(order => (order === 'ymd') === lastMoved);
  }

  #keep(fits: (order: DateOrder) => boolean): void {
    const left = this.possible.filter(fits);
    if (left.length > 0) this.possible = left;
  }
}
