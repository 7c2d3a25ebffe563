// Where labels stand on sheets of paper: those of one specimen below one another, so that they are cut out as a strip
// and pinned in their order; strips in bands, so that one cut goes right across.
import type {Paper} from '../pdf/paper.ts';

export interface Slot {
  readonly page: number;
  readonly xMm: number;
  readonly yMm: number;
}

/** Blank on every side, so that no printer cuts anything off. */
export const MARGIN_MM = 10;
/** Below the labels: the scale and the number of the page. */
export const FOOT_MM = 8;

/**
 * @param strips how many labels each strip has
 * @returns for every strip the places of its labels, in order; undefined where a strip does not fit the paper
 */
export function placed(
  strips: readonly number[],
  {widthMm, heightMm}: {readonly widthMm: number; readonly heightMm: number},
  paper: Paper,
): readonly (readonly Slot[])[] | undefined {
  const columns = Math.floor((paper.widthMm - 2 * MARGIN_MM) / widthMm);
  const rows = Math.floor((paper.heightMm - 2 * MARGIN_MM - FOOT_MM) / heightMm);
  if (columns < 1 || Math.max(0, ...strips) > rows) return undefined;
  const slots: Slot[][] = [];
  let page = 0;
  let row = 0;
  for (let first = 0; first < strips.length; first += columns) {
    const band = strips.slice(first, first + columns);
    const deepest = Math.max(...band);
    if (row + deepest > rows) {
      page++;
      row = 0;
    }
    const top = MARGIN_MM + row * heightMm;
    for (const [column, count] of band.entries()) {
      const xMm = MARGIN_MM + column * widthMm;
      slots.push(Array.from({length: count}, (_, i) => ({page, xMm, yMm: top + i * heightMm})));
    }
    row += deepest;
  }
  return slots;
}
