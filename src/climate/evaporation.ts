// How much water a unit loses to the air, told from its levels and from what was topped up.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {CareDone, WaterReading} from '../records/state.ts';

export interface Evaporation {
  readonly litresPerDay: number;
  /** Over how long it was told. */
  readonly days: number;
  readonly intervals: number;
}

/** A level that was read, or water that came in; `undefined` litres make what lies on both sides incomparable. */
type Event =
  | {readonly kind: 'level'; readonly at: Instant; readonly litres: number}
  | {readonly kind: 'top-up'; readonly at: Instant; readonly litres: number | undefined}
  | {readonly kind: 'change'; readonly at: Instant};

/**
 * Mean loss of a unit. Between two levels: what is missing, and what was topped up in between. Without levels: each
 * top-up replaces what was lost since the one before. A change of water, or a top-up of unknown size, breaks it off.
 * @returns undefined where no two events can be compared
 */
export function evaporationOf(
  water: readonly WaterReading[],
  care: readonly CareDone[],
): Evaporation | undefined {
  const events: Event[] = [
    ...water.flatMap(({at, values: {levelLitres}}): Event[] =>
      levelLitres === undefined ? [] : [{kind: 'level', at, litres: levelLitres}],
    ),
    ...care.flatMap(({task, at, seen, skipped}): Event[] => {
      if (skipped !== undefined) return [];
      if (task === 'change-water') return [{kind: 'change', at}];
      if (task !== 'top-up') return [];
      const {litres} = seen;
      return [{kind: 'top-up', at, litres: typeof litres === 'number' ? litres : undefined}];
    }),
  ].sort((a, b) => a.at - b.at);
  return (
    meanOf(betweenMarks(events, 'level')) ??
    meanOf(
      betweenMarks(
        events.filter(({kind}) => kind !== 'level'),
        'top-up',
      ),
    )
  );
}

interface Loss {
  readonly litres: number;
  readonly days: number;
}

function betweenMarks(events: readonly Event[], mark: 'level' | 'top-up'): Loss[] {
  const losses: Loss[] = [];
  let before: {readonly at: Instant; readonly litres: number} | undefined;
  let added = 0;
  for (const event of events) {
    if (event.kind === 'change') before = undefined;
    else if (event.kind === mark) {
      const known = event.litres !== undefined;
      if (before !== undefined && known && event.at > before.at) {
        // A level fell by what is missing; a top-up is what was missing.
        const lost = mark === 'level' ? before.litres + added - event.litres : event.litres;
        if (lost >= 0) losses.push({litres: lost, days: (event.at - before.at) / MS_PER_DAY});
      }
      before = known || mark === 'top-up' ? {at: event.at, litres: event.litres ?? 0} : undefined;
      added = 0;
    } else if (event.kind === 'top-up') {
      if (event.litres === undefined) before = undefined;
      else added += event.litres;
    }
  }
  return losses;
}

function meanOf(losses: readonly Loss[]): Evaporation | undefined {
  const days = losses.reduce((sum, loss) => sum + loss.days, 0);
  if (days <= 0) return undefined;
  return {
    litresPerDay: losses.reduce((sum, {litres}) => sum + litres, 0) / days,
    days,
    intervals: losses.length,
  };
}
