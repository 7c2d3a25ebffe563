// What was seen of a lot, look by look.
import {inOrder, type Stage, total} from '../records/stage.ts';
import type {SeenAnimals} from './request.ts';

/** Everything seen at one instant. */
export interface Look {
  readonly atDays: number;
  /** Adults that came out since an earlier instant. */
  readonly emerged: readonly {readonly sinceDays: number; readonly count: number}[];
  /** Whoever is not among these was not out: all were looked at for adults. */
  readonly complete: boolean;
  /** Animals by the stage they were judged to be in; all those alive, or some. */
  readonly counted: readonly {readonly stage: Stage; readonly count: number}[];
  /** The entries of the counts. */
  readonly entries: readonly string[];
  /** Animals taken out afterwards. */
  readonly removed: readonly {readonly stage: Stage | undefined; readonly count: number}[];
}

/** Sightings of the same instant belong to one look. */
export function looksOf(sightings: readonly SeenAnimals[], untilDays: number): readonly Look[] {
  const byInstant = new Map<number, SeenAnimals[]>();
  for (const sighting of sightings) {
    if (sighting.atDays > untilDays) continue;
    const same = byInstant.get(sighting.atDays);
    if (same) same.push(sighting);
    else byInstant.set(sighting.atDays, [sighting]);
  }
  return [...byInstant].sort(([a], [b]) => a - b).map(([atDays, seen]) => lookOf(atDays, seen));
}

function lookOf(atDays: number, seen: readonly SeenAnimals[]): Look {
  const counts = seen.filter(sighting => sighting.kind === 'count');
  // Of several counts at one instant the last one says what stands.
  const count = counts.at(-1);
  return {
    atDays,
    emerged: seen.flatMap(sighting =>
      sighting.kind === 'emergence'
        ? [{sinceDays: Math.min(sighting.sinceDays, atDays), count: sighting.count}]
        : [],
    ),
    complete: seen.some(
      sighting =>
        sighting.kind === 'check' ||
        sighting.kind === 'emergence' ||
        (sighting.kind === 'count' && sighting.complete),
    ),
    counted:
      count === undefined || total(count.stages) === 0
        ? []
        : inOrder(count.stages).map(([stage, n]) => ({stage, count: n})),
    entries: counts.map(({entry}) => entry),
    removed: seen.flatMap(sighting =>
      sighting.kind === 'removal' ? [{stage: sighting.stage, count: sighting.count}] : [],
    ),
  };
}
