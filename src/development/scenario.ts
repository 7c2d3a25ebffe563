// The unknowns of a lot laid out as points: member, brood ages, pace. At each the animals are independent.
import {type BroodAges, broodAgesOf} from './brood.ts';
import {type FounderClass, type Passages, passagesOf} from './founders.ts';
import type {CandidateMember} from './members.ts';
import {normalPoints} from './normal.ts';
import {type Tempo, tempoOf} from './tempo.ts';

/** Animals that are alike as far as anybody knows. */
export interface AnimalClass {
  readonly count: number;
  /** When they joined the lot. */
  readonly atDays: number;
  readonly passages: Passages;
}

/** One pace, and what the animals do at it. */
export interface PacePoint {
  /** In standard deviations of the member's ln speed. */
  readonly z: number;
  /** Probability, of the whole lot's. */
  readonly weight: number;
  readonly tempo: Tempo;
  readonly classes: readonly AnimalClass[];
}

/** One member at one set of brood ages, at evenly spaced paces from slow to fast. */
export interface PaceLine {
  readonly member: CandidateMember;
  readonly points: readonly PacePoint[];
}

const PACES = normalPoints(3.5, 0.5);
const ONE_PACE = [{z: 0, weight: 1}];

/** The lines of a member if nobody looks: what is expected from the start. */
export function linesOf(
  member: CandidateMember,
  classes: readonly FounderClass[],
  startDays: number,
): readonly PaceLine[] {
  const {chain, lnSpeedSd} = member;
  const paces = lnSpeedSd === 0 ? ONE_PACE : PACES;
  const broods = broodAgesOf(classes, lnSpeedSd === 0);
  const sameAtAnyPace = chain.inStep && classes.every(({atDays}) => atDays === startDays);
  const mixed = sameAtAnyPace ? passagesOfAll(tempoOf(chain, startDays, 1), classes) : undefined;

  const points: PacePoint[][] = broods.map(() => []);
  const paceless = mixed && broods.map(ages => classesAt(tempoOf(chain, startDays, 1), classes, ages, mixed));
  for (const {z, weight} of paces) {
    const tempo = tempoOf(chain, startDays, Math.exp(lnSpeedSd * z));
    const own = mixed ?? passagesOfAll(tempo, classes);
    broods.forEach((ages, brood) => {
      points[brood]!.push({
        z,
        weight: (member.weight * weight) / broods.length,
        tempo,
        classes: paceless?.[brood] ?? classesAt(tempo, classes, ages, own),
      });
    });
  }
  return points.map(line => ({member, points: line}));
}

function passagesOfAll(tempo: Tempo, classes: readonly FounderClass[]): readonly Passages[] {
  return classes.map(founders => passagesOf(tempo, founders));
}

function classesAt(
  tempo: Tempo,
  classes: readonly FounderClass[],
  ages: BroodAges,
  mixed: readonly Passages[],
): readonly AnimalClass[] {
  return classes.map((founders, c) => ({
    count: founders.count,
    atDays: founders.atDays,
    passages: ages[c] === undefined ? mixed[c]! : passagesOf(tempo, founders, ages[c]),
  }));
}
