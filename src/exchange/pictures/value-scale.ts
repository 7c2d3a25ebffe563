// The value axis of a plot: its ends, round labels, and the rows of named levels.
import type {Extent} from './course-extents.ts';

/** A named temperature drawn through the plot. */
export interface Level {
  readonly valueC: number;
  readonly name: string;
}

export interface ValueScale {
  /** 0 at the top, 1 at the bottom. */
  share(value: number): number;
  /** The row of a value. */
  row(value: number): number;
  readonly labels: ReadonlyMap<number, string>;
}

/** At least so much is shown, lest a steady course looks wild. */
const LEAST_SPAN_C = 4;
const STEPS_C = [0.5, 1, 2, 5, 10, 20];
/** Rows between two labels, at least. */
const LABEL_ROWS = 2;
/** A label is no wider than this. */
export const LABEL_CELLS = 5;

export function valueScale(
  known: readonly (Extent | undefined)[],
  levels: readonly Level[],
  rows: number,
): ValueScale {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  const take = (value: number) => {
    low = Math.min(low, value);
    high = Math.max(high, value);
  };
  for (const extent of known) {
    if (extent === undefined) continue;
    take(extent.low);
    take(extent.high);
  }
  for (const {valueC} of levels) take(valueC);
  if (low > high) [low, high] = [15, 25];
  const widen = Math.max(0, LEAST_SPAN_C - (high - low)) / 2;
  const bottom = Math.floor(low - widen);
  const top = Math.ceil(high + widen);

  const share = (value: number) => Math.min(1, Math.max(0, (top - value) / (top - bottom)));
  const row = (value: number) => Math.round(share(value) * (rows - 1));
  const perC = (rows - 1) / (top - bottom);
  const step = STEPS_C.find(each => each * perC >= LABEL_ROWS) ?? top - bottom;
  const labels = new Map<number, string>();
  for (let value = Math.ceil(bottom / step) * step; value <= top; value += step)
    labels.set(row(value), value.toFixed(step < 1 ? 1 : 0));
  const highest = Math.min(...labels.keys());
  const label = labels.get(highest);
  const short = String(Number(label));
  const named = [`${label} °C`, `${short} °C`, `${short}°C`, `${short}°`].find(
    each => each.length <= LABEL_CELLS,
  );
  if (label !== undefined && named !== undefined) labels.set(highest, named);
  return {share, row, labels};
}

/** Levels that fall on one row share its name: "7.0 egg, larva-5 · 7.4 pupa". */
export function levelsByRow(levels: readonly Level[], scale: ValueScale): Map<number, string> {
  const byValue = new Map<string, string[]>();
  for (const {valueC, name} of [...levels].sort((a, b) => b.valueC - a.valueC)) {
    const names = byValue.get(valueC.toFixed(1)) ?? [];
    if (!names.includes(name)) byValue.set(valueC.toFixed(1), [...names, name]);
  }
  const byRow = new Map<number, string>();
  for (const [value, names] of byValue) {
    const row = scale.row(Number(value));
    const said = `${names.join(', ')} ${value}`;
    byRow.set(row, byRow.has(row) ? `${byRow.get(row)}; ${said}` : said);
  }
  return byRow;
}
