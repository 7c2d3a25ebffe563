// Seeing is learning: what was seen weighs every point of the unknowns, and leaves the animals standing somewhere.

import {compareStages} from '../records/stage.ts';
import {borrowing} from './arena.ts';
import {type BroodAges, broodAgesOf} from './brood.ts';
import type {FounderClass} from './founders.ts';
import {speedAt} from './group-members.ts';
import {tellHidden} from './hidden-story.ts';
import {type LaidPaces, type Lattice, laidWhereLikely, spreadOf, type WeighedPace} from './likely-paces.ts';
import type {Look} from './looks.ts';
import {settled} from './measure.ts';
import {type CandidateMember, foundersOf} from './members.ts';
import {normalDensity} from './normal.ts';
import {animalsIn, goneInto, joined, type Party} from './parties.ts';
import {readLooks} from './reading.ts';
import {type PaceLine, type PacePoint, paceStepOf} from './scenario.ts';
import {daysThrough} from './stage-chain.ts';
import {type Told, tell} from './story.ts';
import {type Tempo, type Tempos, tempoOf} from './tempo.ts';

/** Points this much less likely than the best (in ln) are not followed further. */
const HOPELESS = 6.5;

export interface Learned {
  readonly lines: readonly PaceLine[];
  /** Entries of counts that were more likely worthless than not. */
  readonly leftOut: readonly string[];
}

export interface Known {
  /** The lot that is asked about; empty where there is but one. */
  readonly lot: string;
  readonly members: readonly CandidateMember[];
  readonly classes: readonly FounderClass[];
  readonly looks: readonly Look[];
  readonly startDays: number;
  /** Animals that nobody can count. */
  readonly hidden: boolean;
  /** How many are alive now; null where that does not matter. */
  readonly alive: number | null;
}

/** One member at one set of brood ages, and what was told of it. */
interface Line extends LaidPaces<Point> {
  readonly member: CandidateMember;
  readonly broods: BroodAges;
}

interface Point extends WeighedPace {
  readonly tempo: Tempo;
  /** Null where it is hopeless. */
  readonly told: Told | null;
}

/**
 * The lines of every member with what was seen weighed, and the animals as they stand after the last look. Null where
 * no point of the unknowns can explain what was seen.
 */
export function learn(known: Known): Learned | null {
  const {members, classes, looks, startDays, hidden} = known;
  const {joining, waiting} = arrivals(classes, looks);
  const stages = new Set(members.flatMap(({chain}) => chain.stages.map(({name}) => name))).size + 1;
  const guesses = firstGuesses(known);
  let best = Number.NEGATIVE_INFINITY;
  const least = () => best - HOPELESS;

  const lines = members.flatMap(member => {
    const read = readLooks(looks, joining, stages, member.chain);
    const founders = foundersOf(member, classes);
    const ages = broodAgesOf(member, classes);
    const lnLine = Math.log(member.weight / ages.length);
    return ages.flatMap((broods, age): Line[] => {
      const pointAt = (z: number, leastWeight: number): Point => {
        const tempo = tempoOf(member.chain, startDays, speedAt(member, z));
        const lnPrior = lnLine + (member.lnSpeedSd === 0 ? 0 : Math.log(normalDensity(z)));
        const isHopeless = (lnChance: number) => lnPrior + lnChance < leastWeight;
        return borrowing(() => {
          const told = hidden
            ? tellHidden(tempo, read, founders, broods)
            : tell(temposOf(member, tempo, startDays), read, founders, broods, isHopeless);
          const lnWeight = told === null ? Number.NEGATIVE_INFINITY : lnPrior + told.lnChance;
          best = Math.max(best, lnWeight);
          return {z, tempo, lnWeight, told: told !== null && lnWeight > least() ? withSettled(told) : null};
        });
      };
      if (member.lnSpeedSd === 0) return [{member, broods, points: [pointAt(0, least())], step: 1}];
      const search = {pointAt, least, closest: paceStepOf(member)};
      const laid = laidWhereLikely(guesses.of(member, age) ?? priorOf(search.closest), search);
      if (laid === null) return [];
      guesses.learn(member, age, laid);
      return [{member, broods, ...laid}];
    });
  });
  if (best === Number.NEGATIVE_INFINITY) return null;

  const late = ({member, broods}: Line, tempo: Tempo) =>
    waiting.map(place => joined(() => tempo, foundersOf(member, classes)[place]!, broods[place]));
  return {
    lines: lines.map(line => asPaceLine(line, best, known, late)),
    leftOut: worthlessLooks(lines, best).flatMap(look => looks[look]!.entries),
  };
}

/** Of every lot whose animals lived through something else a tempo of its own. */
function temposOf({elsewhere}: CandidateMember, own: Tempo, startDays: number): Tempos {
  if (elsewhere.size === 0) return () => own;
  const others = new Map([...elsewhere].map(([lot, chain]) => [lot, tempoOf(chain, startDays, own.pace)]));
  return lot => others.get(lot) ?? own;
}

/** Before anything is known of a member's pace it is laid nearly as wide as the prior. */
function priorOf(step: number): Lattice {
  return {centre: 0, step, reach: Math.ceil(3 / step)};
}

/** Guesses further out than this (in standard deviations) are none. */
const CREDIBLE = 4;

/**
 * Where to look for a member's pace: where the one weighed before it was likely. What they have in common is how long
 * they take, in the temperatures lived through, from the stage they were found in to the last one seen.
 */
function firstGuesses({classes, looks, startDays}: Known) {
  const found = classes.map(({stage}) => stage).sort(compareStages);
  const judged = looks.flatMap(({counted}) => counted.map(({stage}) => stage)).sort(compareStages);
  const seen = {
    from: found[0]!,
    to: looks.some(({emerged}) => emerged.length > 0) ? undefined : judged.at(-1),
  };
  const span = {fromDays: startDays, toDays: looks.at(-1)!.atDays};
  const lnDaysOf = ({chain}: CandidateMember) => Math.log(daysThrough(chain, seen, span));
  const byAge: {readonly lnDays: number; readonly sd: number}[] = [];
  let latest: (typeof byAge)[number] | undefined;
  return {
    of(member: CandidateMember, age: number): Lattice | undefined {
      const known = byAge[age] ?? latest;
      if (known === undefined) return undefined;
      const centre = (lnDaysOf(member) - member.lnSpeedMean - known.lnDays) / member.lnSpeedSd;
      return Math.abs(centre) < CREDIBLE
        ? {centre, step: Math.min(paceStepOf(member), (1.3 * known.sd) / member.lnSpeedSd), reach: 1}
        : undefined;
    },
    learn(member: CandidateMember, age: number, {points}: LaidPaces<Point>) {
      const {mean, sd} = spreadOf(points);
      const {lnSpeedMean, lnSpeedSd} = member;
      latest = {lnDays: lnDaysOf(member) - lnSpeedMean - lnSpeedSd * mean, sd: lnSpeedSd * sd};
      byAge[age] = latest;
    },
  };
}

/** What a story leaves, in room of its own. */
function withSettled(told: Told): Told {
  const measures = settled(told.parties.flatMap(({standing}) => standing.leaving));
  let next = 0;
  const parties = told.parties.map(party => {
    const {leaving} = party.standing;
    next += leaving.length;
    return {...party, standing: {...party.standing, leaving: measures.slice(next - leaving.length, next)}};
  });
  return {...told, parties};
}

/** Which founders join before which look, and which after the last one. */
function arrivals(classes: readonly FounderClass[], looks: readonly Look[]) {
  const waiting = new Set(classes.keys());
  const joining = looks.map(look => {
    const arrived = [...waiting].filter(place => classes[place]!.atDays <= look.atDays);
    for (const place of arrived) waiting.delete(place);
    return arrived;
  });
  return {joining, waiting: [...waiting]};
}

/** The looks whose count was more likely worthless than not, over all that is thought possible. */
function worthlessLooks(lines: readonly Line[], best: number): number[] {
  const excess: number[] = [];
  for (const {points, step} of lines)
    for (const {lnWeight, told} of points)
      told?.worthless.forEach((chance, look) => {
        excess[look] = (excess[look] ?? 0) + step * Math.exp(lnWeight - best) * (chance - 0.5);
      });
  return [...excess.keys()].filter(look => excess[look]! > 0);
}

/**
 * What is expected from here on; animals that joined after the last look are as they were found. Before the animals
 * came into their lot, they are any of those that they came from.
 */
function asPaceLine(
  line: Line,
  best: number,
  {lot, alive, startDays}: Pick<Known, 'lot' | 'alive' | 'startDays'>,
  late: (line: Line, tempo: Tempo) => readonly Party[],
): PaceLine {
  const {member, broods, points, step} = line;
  const likely = points.map(({z, tempo, lnWeight, told}): PacePoint => {
    const weight = lnWeight < best - HOPELESS ? 0 : step * Math.exp(lnWeight - best);
    if (weight === 0 || told === null) return {z, weight: 0, tempo, classes: []};
    const own = told.parties.filter(party => party.lot === lot);
    const before = () => told.parties.map(party => goneInto(temposOf(member, tempo, startDays), party, lot));
    const parties = [...(own.length > 0 ? own : before()), ...late(line, tempo)];
    const scale = alive === null ? 1 : alive / animalsIn(parties);
    const classes = parties.map(({label, count, standing}) => ({label, count: count * scale, standing}));
    return {z, weight, tempo, classes};
  });
  return {member, broods, points: likely};
}
