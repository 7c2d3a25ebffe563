// The unknowns of a lot laid out as points: member, brood ages, pace. At each the animals are independent.
import type {Stage} from '../records/stage.ts';
import {type BroodAges, broodAgesOf} from './brood.ts';
import type {FounderClass} from './founders.ts';
import {speedAt} from './group-members.ts';
import {type CandidateMember, foundersOf} from './members.ts';
import {normalPoints} from './normal.ts';
import {type Standing, shareResting, standingOf} from './standing.ts';
import {type Tempo, tempoOf} from './tempo.ts';

/** Animals that are alike as far as anybody knows. */
export interface AnimalClass {
  /** The stage they were last judged to be in. */
  readonly label: Stage;
  readonly count: number;
  /** As they joined the lot, or were last seen. */
  readonly standing: Standing;
}

/** The share of animals that rests. */
export function restingAmong(classes: readonly AnimalClass[]): number {
  const all = classes.reduce((sum, {count}) => sum + count, 0);
  return classes.reduce((sum, {count, standing}) => sum + count * shareResting(standing), 0) / all;
}

/** A pace in standard deviations of the member's ln speed, and its probability up to a factor. */
export interface Pace {
  readonly z: number;
  readonly weight: number;
}

/** One pace, and what the animals do at it. */
export interface PacePoint extends Pace {
  readonly tempo: Tempo;
  readonly classes: readonly AnimalClass[];
}

/** One member at one set of brood ages, at evenly spaced paces from slow to fast. */
export interface PaceLine {
  readonly member: CandidateMember;
  readonly broods: BroodAges;
  readonly points: readonly PacePoint[];
}

const CLOSEST = 0.175;
const FARTHEST = 0.9;
/** So many standard deviations of individuals blur what lies between two paces. */
const INDIVIDUALS = 1.8;

/**
 * How far apart paces may be. Between them the animals are interpolated: exactly where all stages count alike; else
 * the closer the paces, the less individuals differ and blur what lies between.
 */
export function paceStepOf({chain: {stages, inStep}, lnSpeedSd}: CandidateMember): number {
  const days = stages.reduce((sum, {daysAt20}) => sum + daysAt20, 0);
  const sd = Math.sqrt(stages.reduce((sum, {daysAt20, spread}) => sum + (daysAt20 * spread.cv) ** 2, 0));
  const apart = inStep || !Number.isFinite(days) ? FARTHEST : (INDIVIDUALS * sd) / days / lnSpeedSd;
  return Math.min(FARTHEST, Math.max(CLOSEST, apart));
}

/** Paces within 3.5 standard deviations. */
function pacesOf(member: CandidateMember): readonly Pace[] {
  return member.lnSpeedSd === 0 ? [{z: 0, weight: 1}] : normalPoints(3.5, paceStepOf(member));
}

/** The lines of a member as expected from the start, if nobody looks. */
export function expectedLines(
  member: CandidateMember,
  classes: readonly FounderClass[],
  startDays: number,
): readonly PaceLine[] {
  const ages = broodAgesOf(member, classes);
  const classesAt = foundAtPaces(member, classes, startDays);
  const paces = pacesOf(member).map(({z, weight}) => ({z, weight: (member.weight * weight) / ages.length}));
  return ages.map(broods => ({
    member,
    broods,
    points: expectedPoints(member, startDays, paces, broods, classesAt),
  }));
}

/** Lines with what they weigh now, and the animals as expected from the start. */
export function fromTheStart(
  lines: readonly PaceLine[],
  classes: readonly FounderClass[],
  startDays: number,
): readonly PaceLine[] {
  return lines.map(({member, broods, points}) => {
    const classesAt = foundAtPaces(member, classes, startDays);
    const likely = points.filter(({weight}) => weight > 0);
    return {member, broods, points: expectedPoints(member, startDays, likely, broods, classesAt)};
  });
}

/** The animals as they were found, for a pace and the ages of the broods. */
type ClassesAt = (tempo: Tempo, broods: BroodAges) => readonly AnimalClass[];

function expectedPoints(
  member: CandidateMember,
  startDays: number,
  paces: readonly Pace[],
  broods: BroodAges,
  classesAt: ClassesAt,
): PacePoint[] {
  return paces.map(({z, weight}) => {
    const tempo = tempoOf(member.chain, startDays, speedAt(member, z));
    return {z, weight, tempo, classes: classesAt(tempo, broods)};
  });
}

/** Where nothing depends on the pace but the dose axis itself, paces share the same classes. */
function foundAtPaces(
  member: CandidateMember,
  classes: readonly FounderClass[],
  startDays: number,
): ClassesAt {
  const {chain} = member;
  const all = foundersOf(member, classes);
  const sameAtAnyPace = chain.inStep && classes.every(({atDays}) => atDays === startDays);
  const known = new Map<string, readonly AnimalClass[]>();
  return (tempo, broods) => {
    const name = `${sameAtAnyPace ? '' : tempo.pace} ${broods.join(' ')}`;
    let made = known.get(name);
    if (made === undefined) {
      made = all.map((founders, c) => {
        const {stage, count} = founders;
        return {label: stage, count, standing: standingOf(tempo, founders, broods[c])};
      });
      known.set(name, made);
    }
    return made;
  };
}
