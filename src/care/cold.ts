// A winter: what it suspends, and what takes its place.
import type {Instant} from '../records/entry.ts';
import {type RoomState, type Rule, type Unit, valueAt} from '../records/state.ts';

/** A unit held at this or below is a winter. Common practice (2–7 °C), no source. */
export const COLD_C = 7;

/** Held as cold as a winter. */
function isHeldCold({setPoints}: Pick<Unit, 'setPoints'>): boolean {
  return setPoints !== undefined && 'constant' in setPoints && setPoints.constant <= COLD_C;
}

/** Since when a unit has been held so, as far back as it is known; undefined where it is not. */
export function heldColdSince(
  unit: string,
  {units}: Pick<RoomState, 'units'>,
  now: Instant,
): Instant | undefined {
  const history = units.get(unit);
  if (history === undefined || !isHeldCold(valueAt(history, now))) return undefined;
  const warm = history.findLast(({value}) => !isHeldCold(value));
  const next = history.find(({from}) => warm !== undefined && from > warm.from);
  return next?.from ?? warm?.from ?? Number.NEGATIVE_INFINITY;
}

/**
 * Whether a rule holds in such a cold for those who live there. On land care is suspended, whoever overwinters is only
 * looked at now and then; triggers stay, and what the room wrote for that very lot or unit. Water that cold is where
 * some animals live and eat.
 */
export function isWantedWhereHeld({task, when, for: {lot, unit: named}}: Rule, unit: Unit): boolean {
  const wintering = unit.type !== 'aquarium' && isHeldCold(unit);
  if (task === 'check-cold') return wintering;
  return !wintering || when !== undefined || lot !== undefined || named !== undefined;
}
