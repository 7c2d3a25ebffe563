// A record held a little beyond its ends: the moments before the first reading and after the last one.
import type {TemperatureTrace} from '../thermal/trace.ts';
import type {Span} from './part.ts';

/**
 * The trace with its first temperature at the beginning of the edges and its last one at their end, where these lie
 * outside it: one more pause each, and the usual gap rule says whether it is too long. Infinite edges add nothing.
 */
export function heldToEdges(trace: TemperatureTrace, {fromDays, toDays}: Span): TemperatureTrace {
  const {atDays, temperatureC} = trace;
  const rows = atDays.length;
  if (rows === 0) return trace;
  const before = fromDays < atDays[0]! && Number.isFinite(fromDays);
  const after = toDays > atDays[rows - 1]! && Number.isFinite(toDays);
  if (!before && !after) return trace;

  const extended = (column: Float64Array, first: number, last: number) => {
    const all = new Float64Array(rows + Number(before) + Number(after));
    all.set(column, Number(before));
    if (before) all[0] = first;
    if (after) all[all.length - 1] = last;
    return all;
  };
  return {
    ...trace,
    atDays: extended(atDays, fromDays, toDays),
    temperatureC: extended(temperatureC, temperatureC[0]!, temperatureC[rows - 1]!),
  };
}
