// Prepupae and fresh pupae are left alone: a cage in which everybody rests is not disturbed for a while.
import type {Instant} from '../records/entry.ts';
import type {Lot, Unit} from '../records/state.ts';
import {hasFeeders, restsSince, stagesOf} from './stages.ts';
import type {Clock, Window} from './window.ts';

/** Until a pupa is hard. Common practice (3–5 days), no source. */
const UNDISTURBED_DAYS = 3;

/** Until when those who live in the unit are not to be disturbed; undefined where somebody does not rest. */
export function restOf(unit: Unit, lots: readonly Lot[], clock: Clock): Instant | undefined {
  if (unit.type !== 'cage' || !lots.every(isResting)) return undefined;
  return clock.after(Math.max(...lots.map(restsSince)), UNDISTURBED_DAYS);
}

/** The window of a task, moved behind the rest of those who live in the unit. */
export function letRest(window: Window, until: Instant | undefined): Window {
  if (until === undefined) return window;
  const not = (at: Instant) => Math.max(at, until);
  return {
    since: window.since,
    earliest: not(window.earliest),
    target: not(window.target),
    latest: not(window.latest),
  };
}

function isResting(lot: Lot): boolean {
  return !hasFeeders(lot) && stagesOf(lot).includes('prepupa');
}
