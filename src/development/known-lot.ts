// What the model makes of the animals of a lot: which kinds they may be, as expected from the start, and as learned.
import type {FounderClass} from './founders.ts';
import {type Learned, learn} from './learning.ts';
import {arePartedOrJoined, type Look, movesOf} from './looks.ts';
import {type CandidateMember, membersOf} from './members.ts';
import type {ForecastRequest} from './request.ts';
import {inTwoSorts, type RestEntries} from './rest.ts';
import {expectedLines, type PaceLine} from './scenario.ts';

/** What the model makes of animals from where they began. */
export interface KnownLot {
  readonly classes: readonly FounderClass[];
  readonly startDays: number;
  readonly members: readonly CandidateMember[];
  readonly unfit: readonly string[];
  /** As expected from the start, before anybody looked. */
  readonly expected: readonly PaceLine[];
  /** Null where nobody looked, or nothing explains what was seen. */
  readonly learned: Learned | null;
  readonly lines: readonly PaceLine[];
}

/**
 * @param rest what is known of rest in the classes, or until when all rest; null where none does. Before that only
 * who went where is known of what was seen.
 */
export function knownOf(
  {lot = '', candidates, course, elsewhere, alive}: ForecastRequest,
  classes: readonly FounderClass[],
  seen: readonly Look[],
  rest: {readonly entries: RestEntries} | {readonly restUntilDays: number} | null,
): KnownLot {
  const foundDays = Math.min(...classes.map(({atDays}) => atDays));
  const startDays =
    rest !== null && 'restUntilDays' in rest ? Math.max(foundDays, rest.restUntilDays) : foundDays;
  const looks = [
    ...movesOf(seen.filter(({atDays}) => atDays < startDays)),
    ...seen.filter(({atDays}) => atDays >= startDays),
  ];
  const {members: alike, unfit} = membersOf(candidates, classes, course, elsewhere);
  const members = rest !== null && 'entries' in rest ? inTwoSorts(alike, rest.entries) : alike;
  const told = {lot, members, classes, startDays, hidden: alive === null, alive};
  const learned = looks.length === 0 || members.length === 0 ? null : learn({...told, looks});
  const moves =
    arePartedOrJoined(looks) && members.length > 0 ? learn({...told, looks: movesOf(looks)}) : null;
  const expected =
    moves === null
      ? members.flatMap(member => expectedLines(member, classes, startDays))
      : moves.lines.map(line => ({...line, points: line.points.filter(({weight}) => weight > 0)}));
  return {classes, startDays, members, unfit, expected, learned, lines: learned?.lines ?? expected};
}

/** By candidate, what its lines weigh of all. */
export function weightsOf(lines: readonly PaceLine[], candidates: number): readonly number[] {
  const weights = new Array<number>(candidates).fill(0);
  for (const {member, points} of lines)
    for (const {weight} of points) weights[member.candidate] = weights[member.candidate]! + weight;
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map(weight => weight / whole);
}

/** Candidates that weigh less tell neither survival nor the sexes apart. */
export const WORTH_TELLING = 0.05;

/** The room's own survival, else that of the profiles as far as they know it; null where none does. */
export function survivalOf(
  {survival, candidates}: ForecastRequest,
  weights: readonly number[],
): number | null {
  if (survival !== null) return survival;
  let known = 0;
  let sum = 0;
  candidates.forEach(({profile}, i) => {
    if (profile.survival === undefined) return;
    known += weights[i]!;
    sum += weights[i]! * profile.survival;
  });
  return known < WORTH_TELLING ? null : sum / known;
}
