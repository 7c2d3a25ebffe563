// How many moults are still to come: what can be said of animals for which no honest date exists.
import {compareStages, type Stage} from '../records/stage.ts';
import type {FounderClass} from './founders.ts';
import type {Candidate, SeenAnimals} from './request.ts';

/** One sentence for each candidate without dates: why there are none, and how many moults its animals have to go. */
export function moultsToGo(
  candidates: readonly Candidate[],
  classes: readonly Pick<FounderClass, 'stage'>[],
  sightings: readonly SeenAnimals[],
): readonly string[] {
  const furthest = furthestSeen(classes, sightings);
  const others = candidates.some(({profile, weight}) => weight > 0 && !('undated' in profile));
  return candidates.flatMap(({profile, weight}) => {
    if (!('undated' in profile) || weight === 0) return [];
    const hold = others ? ' The dates here hold for the other candidates alone.' : '';
    const sentence = `${profile.name} get no date: ${profile.undated.why}${hold}`;
    const range = profile.stages.find(({instars}) => instars !== undefined)?.instars;
    if (range === undefined || furthest === undefined || /pupa/.test(furthest)) return [sentence];
    return [`${sentence} ${moultWords(range, furthest, profile.stages.at(-1)!.stage)}`];
  });
}

function moultWords([fewest, most]: readonly [number, number], furthest: Stage, last: string): string {
  const into = last === 'pupa' ? 'pupa' : 'adult';
  const usual = fewest === most ? `${most} instars` : `${fewest} to ${most} instars`;
  const instar = Number(furthest.split('-')[1]);
  if (!Number.isFinite(instar)) return `Count moults: ${usual} before the ${into}.`;
  // The last instar has one moult to go: into the pupa or the adult.
  const [least, greatest] = [Math.max(1, fewest - instar + 1), most - instar + 1];
  if (greatest < 1) return `Count moults: more instars than the ${usual} known are seen already.`;
  const moults = least === greatest ? `${least}` : `${least} to ${greatest}`;
  const noun = greatest === 1 ? 'moult' : 'moults';
  return `Count moults: the furthest was last seen in instar ${instar}, so ${moults} ${noun} to the ${into}.`;
}

/** The stage furthest on that was seen when last somebody looked, else that of the beginning. */
function furthestSeen(
  classes: readonly Pick<FounderClass, 'stage'>[],
  sightings: readonly SeenAnimals[],
): Stage | undefined {
  const counted = sightings.findLast(seen => seen.kind === 'count');
  const stages =
    counted?.kind === 'count'
      ? Object.keys(counted.stages).filter(stage => counted.stages[stage]! > 0)
      : classes.map(({stage}) => stage);
  return stages.toSorted(compareStages).at(-1);
}
