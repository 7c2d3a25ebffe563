// The antiderivative of a rate that has no formula for it: piecewise polynomials, as fine as the rate asks for.

/** Chebyshev terms of a panel. */
const TERMS = 16;
/** The last terms of a panel are no larger than this share of its largest. */
const PRECISE = 1e-13;
const FIRST_PANELS_C = 5;
const FINEST_PANEL_C = 1e-3;

/** A span with the Chebyshev series of the area within it, 0 at its beginning. */
interface Panel {
  readonly from: number;
  readonly to: number;
  readonly areaBefore: number;
  readonly series: readonly number[];
}

/**
 * ∫ f from `from` to a point up to `to`, relative error about 1e-12: f is taken as a Chebyshev series on each of
 * many panels, halved until the series has died away (Clenshaw & Curtis 1960, Numerische Mathematik 2:197–205), and
 * the series are integrated term by term. Made when first asked.
 */
export function tabulated(f: (x: number) => number, from: number, to: number): (x: number) => number {
  let made: readonly Panel[] | undefined;
  return x => {
    made ??= panelsOf(f, from, to);
    const panel = made[panelAt(made, x)]!;
    const middle = (panel.from + panel.to) / 2;
    return panel.areaBefore + sumOf(panel.series, (x - middle) / (panel.to - middle));
  };
}

function panelsOf(f: (x: number) => number, from: number, to: number): Panel[] {
  const panels: Panel[] = [];
  let areaBefore = 0;
  const cut = (left: number, right: number): void => {
    const terms = seriesOf(f, left, right);
    const largest = Math.max(...terms.map(Math.abs));
    const last = Math.max(Math.abs(terms[TERMS - 1]!), Math.abs(terms[TERMS - 2]!));
    if (last > PRECISE * largest && right - left > FINEST_PANEL_C) {
      const middle = (left + right) / 2;
      cut(left, middle);
      cut(middle, right);
      return;
    }
    const series = integrated(terms, (right - left) / 2);
    panels.push({from: left, to: right, areaBefore, series});
    areaBefore += sumOf(series, 1);
  };
  const count = Math.ceil((to - from) / FIRST_PANELS_C);
  for (let i = 0; i < count; i++)
    cut(from + ((to - from) * i) / count, from + ((to - from) * (i + 1)) / count);
  return panels;
}

/** f on a span as Σ c_k·T_k, from its values at the Chebyshev points. */
function seriesOf(f: (x: number) => number, left: number, right: number): number[] {
  const angle = (j: number) => (Math.PI * (j + 0.5)) / TERMS;
  const values = Array.from({length: TERMS}, (_, j) =>
    f((left + right) / 2 + ((right - left) / 2) * Math.cos(angle(j))),
  );
  return Array.from({length: TERMS}, (_, k) => {
    const sum = values.reduce((all, value, j) => all + value * Math.cos(k * angle(j)), 0);
    return (sum * (k === 0 ? 1 : 2)) / TERMS;
  });
}

/** The series of the integral from −1: ∫ T_k = (T_(k+1)/(k+1) − T_(k−1)/(k−1))/2. */
function integrated(terms: readonly number[], half: number): number[] {
  const at = (k: number) => terms[k] ?? 0;
  const series = Array.from({length: TERMS + 1}, (_, k) => {
    if (k === 0) return 0;
    const before = k === 1 ? 2 * at(0) : at(k - 1);
    return (half * (before - at(k + 1))) / (2 * k);
  });
  series[0] = -sumOf(series, -1);
  return series;
}

/** Σ c_k·T_k(s), by Clenshaw's recurrence. */
function sumOf(series: readonly number[], s: number): number {
  let [one, two] = [0, 0];
  for (let k = series.length - 1; k > 0; k--) [one, two] = [series[k]! + 2 * s * one - two, one];
  return series[0]! + s * one - two;
}

/** The last panel that begins at or below x. */
function panelAt(panels: readonly Panel[], x: number): number {
  let low = 0;
  let high = panels.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (panels[middle]!.from <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}
