// Whether a readings document keeps its own rules: columns of one length, instants rising inside its month.
import {endOf, startOf} from './months.ts';
import type {ReadingsDocument} from './readings.ts';

/** @returns what is wrong, undefined where nothing is */
export function faultInReadings(
  document: ReadingsDocument,
  batches: ReadonlySet<string>,
): string | undefined {
  const {month, seconds, temperatureC, rhPercent} = document;
  const rows = seconds.length;
  for (const [name, column] of Object.entries({temperatureC, rhPercent}))
    if (column !== null && column.length !== rows)
      return `${name} has ${column.length} values for ${rows} instants`;
  const length = (endOf(month) - startOf(month)) / 1000;
  for (let i = 0, before = -1; i < rows; i++) {
    const at = seconds[i]!;
    if (!(at > before && at < length))
      return `second ${at} in row ${i + 1} is out of order or outside ${month}`;
    before = at;
  }
  const counted = document.batches.reduce((sum, [, count]) => sum + count, 0);
  if (counted !== rows) return `its imports account for ${counted} of ${rows} rows`;
  const unknown = document.batches.find(([batch]) => !batches.has(batch));
  return unknown && `import ${unknown[0]} is not in room.json`;
}
