// How long the animals of a lot took over each stage, read off the looks alone, without a profile.
import {compareStages, type Stage, type StageCounts, total} from '../records/stage.ts';
import type {FoundingCohort, SeenAnimals} from './request.ts';

export interface StageDuration {
  readonly stage: Stage;
  /** When half of the animals had entered it, and left it. */
  readonly fromDays: number;
  readonly toDays: number;
  readonly days: number;
  /** How far the two instants lie between looks: half of both pauses together. */
  readonly looseDays: number;
  /** How many animals there were when half of them left. */
  readonly animals: number;
}

/** Half of the animals have passed an instant. */
interface Crossing {
  readonly atDays: number;
  readonly looseDays: number;
  readonly animals: number;
}

/** The share of animals beyond a stage at a look. */
interface Share {
  readonly atDays: number;
  readonly share: number;
  readonly animals: number;
}

/** Animals that began no further than this into a stage entered it when they were recorded. */
const JUST_BEGUN = 0.1;
const HALF = 0.5;

/**
 * The stages that half of the animals were seen to enter and to leave. Between two looks the share beyond a stage is
 * taken to grow evenly. Stages of which the beginning or the end lies before the first look or after the last are not
 * told.
 */
export function stageDurations(
  cohorts: readonly FoundingCohort[],
  sightings: readonly SeenAnimals[],
): StageDuration[] {
  const shown = toldAlike(cohorts, sightings);
  const stages = [
    ...new Set([
      ...shown.cohorts.flatMap(({stages}) => Object.keys(stages)),
      ...shown.sightings.flatMap(sighting => (sighting.kind === 'count' ? Object.keys(sighting.stages) : [])),
    ]),
  ].sort(compareStages);
  let entered = beginningOf(shown.cohorts, stages[0]);
  const durations: StageDuration[] = [];
  for (const [i, stage] of stages.entries()) {
    const left = crossingOf(sharesBeyond(stage, i === stages.length - 1, shown.cohorts, shown.sightings));
    if (entered !== undefined && left !== undefined && left.atDays > entered.atDays)
      durations.push({
        stage,
        fromDays: entered.atDays,
        toDays: left.atDays,
        days: left.atDays - entered.atDays,
        looseDays: entered.looseDays + left.looseDays,
        animals: left.animals,
      });
    entered = left;
  }
  return durations;
}

/** A lot whose instars were not always told apart has them told apart nowhere. */
function toldAlike(cohorts: readonly FoundingCohort[], sightings: readonly SeenAnimals[]) {
  const counted = sightings.flatMap(each => (each.kind === 'count' ? [each.stages] : []));
  const names = new Set([...cohorts.map(({stages}) => stages), ...counted].flatMap(Object.keys));
  const joined = ['larva', 'nymph'].filter(kind => names.has(kind));
  const plain = (counts: StageCounts): StageCounts => {
    const sums: Record<Stage, number> = {};
    for (const [stage, count] of Object.entries(counts)) {
      const kind = joined.find(each => stage.startsWith(`${each}-`)) ?? stage;
      sums[kind] = (sums[kind] ?? 0) + count;
    }
    return sums;
  };
  return {
    cohorts: cohorts.map(cohort => ({...cohort, stages: plain(cohort.stages)})),
    sightings: sightings.map(each => (each.kind === 'count' ? {...each, stages: plain(each.stages)} : each)),
  };
}

/** When the first stage began, where all animals were recorded as they entered it. */
function beginningOf(cohorts: readonly FoundingCohort[], first: Stage | undefined): Crossing | undefined {
  const fresh = cohorts.every(
    ({stages, progress}) => Object.keys(stages).every(stage => stage === first) && progress[1] <= JUST_BEGUN,
  );
  if (!fresh || cohorts.length === 0) return undefined;
  const animals = cohorts.reduce((sum, {stages}) => sum + total(stages), 0);
  let counted = 0;
  for (const {atDays, stages} of [...cohorts].sort((a, b) => a.atDays - b.atDays)) {
    counted += total(stages);
    if (counted >= HALF * animals) return {atDays, looseDays: 0, animals};
  }
  return undefined;
}

function sharesBeyond(
  stage: Stage,
  isLast: boolean,
  cohorts: readonly FoundingCohort[],
  sightings: readonly SeenAnimals[],
): Share[] {
  const beyond = (counts: StageCounts) =>
    Object.entries(counts).reduce(
      (sum, [each, count]) => (compareStages(each, stage) > 0 ? sum + count : sum),
      0,
    );
  const shares: Share[] = [];
  let emerged = 0;
  const of = (atDays: number, counts: StageCounts) => {
    const animals = total(counts) + emerged;
    if (animals > 0) shares.push({atDays, share: (beyond(counts) + emerged) / animals, animals});
  };
  const start = Math.min(...cohorts.map(({atDays}) => atDays));
  let alive = 0;
  const begun: Record<Stage, number> = {};
  for (const {atDays, stages} of cohorts)
    for (const [each, count] of Object.entries(stages)) {
      alive += count;
      if (atDays === start) begun[each] = (begun[each] ?? 0) + count;
    }
  of(start, begun);
  for (const sighting of [...sightings].sort((a, b) => a.atDays - b.atDays)) {
    if (sighting.kind === 'removal') alive -= sighting.count;
    if (sighting.kind === 'count' && sighting.complete) of(sighting.atDays, sighting.stages);
    if (sighting.kind !== 'emergence') continue;
    const before = shares.at(-1)?.share ?? 0;
    // Of the last stage, whoever looks for adults has seen how many are left in it.
    if (isLast && sighting.sinceDays > (shares.at(-1)?.atDays ?? start))
      shares.push({atDays: sighting.sinceDays, share: before, animals: alive});
    emerged += sighting.count;
    if (isLast && alive > 0)
      shares.push({atDays: sighting.atDays, share: Math.min(1, emerged / alive), animals: alive});
  }
  return shares;
}

/** Where the share passes a half, evenly between the two looks. */
function crossingOf(shares: readonly Share[]): Crossing | undefined {
  const after = shares.findIndex(({share}) => share >= HALF);
  if (after < 1) return undefined;
  const [a, b] = [shares[after - 1]!, shares[after]!];
  const part = (HALF - a.share) / (b.share - a.share);
  return {
    atDays: a.atDays + part * (b.atDays - a.atDays),
    looseDays: (b.atDays - a.atDays) / 2,
    animals: b.animals,
  };
}
