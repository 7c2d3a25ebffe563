// Prepupae and fresh pupae are left alone: a cage in which everybody rests is not disturbed for a while.
import type {Instant} from '../records/entry.ts';
import type {Lot, Unit} from '../records/state.ts';
import {hasFeeders, restsSince, stagesOf} from './stages.ts';
import type {Clock, Window} from './window.ts';

/** Until a pupa is hard. Common practice (3–5 days), no source. */
const UNDISTURBED_DAYS = 3;

/** The window of a task, moved behind the rest of those who live in the unit. */
export function letRest(window: Window, unit: Unit, lots: readonly Lot[], clock: Clock): Window {
  if (unit.type !== 'cage' || !lots.every(isResting)) return window;
  const until = clock.after(Math.max(...lots.map(restsSince)), UNDISTURBED_DAYS);
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
