// What was seen of a lot, look by look.
import {inOrder, type Stage, total} from '../records/stage.ts';
import type {SeenAnimals} from './request.ts';

/** Everything seen of one lot at one instant. */
export interface Look {
  readonly atDays: number;
  /** Empty where there is but one. */
  readonly lot: string;
  /** Adults that came out since an earlier instant. */
  readonly emerged: readonly {readonly sinceDays: number; readonly count: number}[];
  /** Whoever is not among these was not out: all were looked at for adults. */
  readonly complete: boolean;
  /** Animals by the stage they were judged to be in; all those alive, or some. */
  readonly counted: readonly {readonly stage: Stage; readonly count: number}[];
  /** The entries of the counts. */
  readonly entries: readonly string[];
  /** Animals taken out afterwards, and the lot in which they go on if they do. */
  readonly removed: readonly {
    readonly stage: Stage | undefined;
    readonly count: number;
    readonly into: string | undefined;
  }[];
  /** The lot in which all go on from then. */
  readonly mergedInto: string | undefined;
}

/** Sightings of a lot at one instant belong to one look, until animals go to another lot. */
export function looksOf(sightings: readonly SeenAnimals[], untilDays: number): readonly Look[] {
  const looks = new Map<string, SeenAnimals[]>();
  let moves = 0;
  for (const sighting of sightings) {
    if (sighting.atDays > untilDays) continue;
    const name = `${sighting.atDays} ${moves} ${sighting.lot ?? ''}`;
    const same = looks.get(name);
    if (same) same.push(sighting);
    else looks.set(name, [sighting]);
    if ('into' in sighting && sighting.into !== undefined) moves++;
  }
  return [...looks.values()].map(lookOf).sort((a, b) => a.atDays - b.atDays);
}

/** Looks of which only is known who was taken out and who went where. */
export function movesOf(looks: readonly Look[]): readonly Look[] {
  return looks
    .filter(({removed, mergedInto}) => removed.length > 0 || mergedInto !== undefined)
    .map(look => ({...look, emerged: [], complete: false, counted: [], entries: []}));
}

/** Whether animals went from lot to lot. */
export function arePartedOrJoined(looks: readonly Look[]): boolean {
  return looks.some(
    ({removed, mergedInto}) => mergedInto !== undefined || removed.some(({into}) => into !== undefined),
  );
}

function lookOf(seen: readonly SeenAnimals[]): Look {
  const {atDays, lot = ''} = seen[0]!;
  const counts = seen.filter(sighting => sighting.kind === 'count');
  // Of several counts at one instant the last one says what stands.
  const count = counts.at(-1);
  return {
    atDays,
    lot,
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
      sighting.kind === 'removal'
        ? [{stage: sighting.stage, count: sighting.count, into: sighting.into}]
        : [],
    ),
    mergedInto: seen.find(sighting => sighting.kind === 'merge')?.into,
  };
}
