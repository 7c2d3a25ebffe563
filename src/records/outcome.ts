// What became of a lot: survival, parasitism, sexes, and the days on which adults came out.
import {lossesOf} from './balance.ts';
import type {Civil, Day} from './civil.ts';
import type {Instant} from './entry.ts';
import {isHidden} from './fold-lots.ts';
import {type LifeTable, lifeTable} from './life-table.ts';
import {total} from './stage.ts';
import {type StageDuration, stageDurations} from './stage-durations.ts';
import type {Lot, RoomState} from './state.ts';

export interface Share {
  readonly count: number;
  readonly of: number;
  /** Null where there is nothing to share. */
  readonly share: number | null;
}

export interface EmergenceOfDay {
  readonly day: Day;
  readonly female: number;
  readonly male: number;
  readonly unknown: number;
  /** Of all that have come out by now. */
  readonly cumulative: number;
}

export interface Outcome {
  readonly lot: string;
  readonly alive: number;
  readonly exact: boolean;
  /** Adults of those that were left to become adult: not preserved, split off, merged away or given away. */
  readonly survival: Share;
  /** Hosts that died of parasitoids, of all animals and of those whose end is known. */
  readonly parasitism: {readonly ofAll: Share; readonly ofKnown: Share};
  readonly losses: Readonly<Record<string, number>>;
  /** Specimens that came of it: a host may give many parasitoids. */
  readonly products: {readonly adults: number; readonly parasitoids: number};
  readonly sexes: {readonly female: number; readonly male: number; readonly unknown: number};
  /** Females among the adults whose sex is known. */
  readonly females: Share;
  readonly emergence: readonly EmergenceOfDay[];
  /** When half of the adults that came out were out, of all and by sex. */
  readonly half: {
    readonly all: Instant | null;
    readonly female: Instant | null;
    readonly male: Instant | null;
  };
  readonly durations: readonly StageDuration[];
  readonly lifeTable: LifeTable | null;
}

export function outcomeOf(lot: Lot, state: RoomState, civil: Civil): Outcome {
  const {started, hatched, mergedIn, found, emerged, parasitised, lost, preserved, splitOff, mergedOut} =
    lot.tally;
  // Of hidden animals only those that came to light are in the sum, so that nothing can be shared by it.
  const cameIn = isHidden(lot) ? 0 : started + hatched + mergedIn + found;
  const losses = lossesOf(lot);
  const given = losses.given ?? 0;
  const adults = lot.specimens.flatMap(code => {
    const specimen = state.specimens.get(code);
    return specimen?.kind === 'adult' ? [specimen] : [];
  });
  const parasitoids = lot.specimens.reduce((sum, code) => {
    const specimen = state.specimens.get(code);
    return specimen?.kind === 'parasitoid' ? sum + specimen.individuals : sum;
  }, 0);
  const sexes = {female: 0, male: 0, unknown: 0};
  for (const {sex = 'unknown', individuals} of adults) sexes[sex] += individuals;
  const half = (sex?: 'female' | 'male') =>
    middleOf(adults.filter(adult => sex === undefined || adult.sex === sex).map(({at}) => at));
  return {
    lot: lot.code,
    alive: total(lot.alive),
    exact: lot.exact,
    survival: shareOf(emerged, cameIn - preserved - splitOff - mergedOut - given),
    parasitism: {
      ofAll: shareOf(parasitised, cameIn - splitOff - mergedOut),
      ofKnown: shareOf(parasitised, parasitised + emerged),
    },
    losses: lost === 0 ? {} : losses,
    products: {adults: sexes.female + sexes.male + sexes.unknown, parasitoids},
    sexes,
    females: shareOf(sexes.female, sexes.female + sexes.male),
    emergence: emergenceByDay(adults, civil),
    half: {all: half(), female: half('female'), male: half('male')},
    durations: stageDurations(lot),
    lifeTable: lifeTable(lot) ?? null,
  };
}

function shareOf(count: number, of: number): Share {
  return {count, of, share: of > 0 ? count / of : null};
}

function emergenceByDay(
  adults: readonly {readonly at: Instant; readonly sex?: 'female' | 'male' | 'unknown' | undefined}[],
  civil: Civil,
): EmergenceOfDay[] {
  const days = new Map<Day, {female: number; male: number; unknown: number}>();
  for (const {at, sex = 'unknown'} of adults.toSorted((a, b) => a.at - b.at)) {
    const day = civil.dayOf(at);
    const counts = days.get(day) ?? {female: 0, male: 0, unknown: 0};
    counts[sex]++;
    days.set(day, counts);
  }
  let out = 0;
  return [...days].map(([day, counts]) => {
    out += counts.female + counts.male + counts.unknown;
    return {day, ...counts, cumulative: out / adults.length};
  });
}

/** The instant by which half were out, rounded up. */
function middleOf(instants: readonly Instant[]): Instant | null {
  return instants.toSorted((a, b) => a - b)[Math.ceil(instants.length / 2) - 1] ?? null;
}
