// How a window is divided: a pure function of its columns and rows.

export const LEAST_COLUMNS = 60;
export const LEAST_ROWS = 16;

export type Layout =
  | {readonly kind: 'small'; readonly columns: number; readonly height: number}
  | {
      readonly kind: 'page';
      readonly columns: number;
      /** All lines of a page; one less than the window, for a full one makes the terminal scroll. */
      readonly height: number;
      /** Lines between the rules. */
      readonly body: number;
      /** Lines about what is under the cursor. */
      readonly detail: number;
      /** Lines of keys. */
      readonly keys: number;
    };

/** Lines that every page has: head, two rules, and what was just said. */
const FRAME_LINES = 4;
const KEY_LINES = 2;

export function layoutOf(columns: number, rows: number): Layout {
  const height = Math.max(1, rows - 1);
  if (columns < LEAST_COLUMNS || rows < LEAST_ROWS) return {kind: 'small', columns, height};
  const free = height - FRAME_LINES - KEY_LINES;
  const detail = rows < 20 ? 3 : rows < 30 ? 6 : 8;
  return {kind: 'page', columns, height, body: free - detail, detail, keys: KEY_LINES};
}

/** The first row to show so that the cursor stays in sight, near the middle of a long list. */
export function firstShown(cursor: number, count: number, room: number): number {
  const last = Math.max(0, count - room);
  return Math.min(last, Math.max(0, cursor - Math.floor(room / 2)));
}
