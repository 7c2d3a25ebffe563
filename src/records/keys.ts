// A record with a key is applied once, however often it is sent.
import type {RoomRecord} from './schema/index.ts';

/**
 * The positions of the records that are still to be applied.
 * @param isApplied whether a record with this key was applied before
 */
export function notYetApplied(
  records: readonly RoomRecord[],
  isApplied: (key: string) => boolean,
): readonly number[] {
  const met = new Set<string>();
  const positions: number[] = [];
  for (const [position, {key}] of records.entries()) {
    if (key !== undefined && (isApplied(key) || met.has(key))) continue;
    if (key !== undefined) met.add(key);
    positions.push(position);
  }
  return positions;
}
