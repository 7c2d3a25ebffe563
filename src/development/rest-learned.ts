// How likely animals rest after all that was seen of them, and what those are that did not come out in time.
import type {FounderClass} from './founders.ts';
import {type KnownLot, knownOf, survivalOf, weightsOf} from './known-lot.ts';
import {isLateAt} from './lateness.ts';
import type {Look} from './looks.ts';
import {type NotOut, whyNotOut} from './not-out.ts';
import type {Candidate, ForecastRequest} from './request.ts';
import {
  houseRestOf,
  MOSTLY,
  type Rest,
  type RestEntries,
  restEntriesOf,
  restingAtFirst,
  restingNow,
  restOf,
  restRatherThanDeath,
} from './rest.ts';

/** Of animals that were to emerge, so many die unseen where no survival is known. Common practice, no source. */
const DEAD = 0.1;
/** From outside nobody can rule it out, however well the kind survives. Common practice, no source. */
const LEAST_DEAD = 0.02;

export interface RestLearned {
  readonly rest: Rest;
  /** The lot as if no cold ended any rest. */
  readonly asFound: KnownLot;
  /** Of a lot that is late: what those left are. */
  readonly notOut: NotOut | null;
}

/** How likely animals rest after all that was seen. Once the cold was enough they go on, and looks no longer tell. */
export function restLearned(
  request: ForecastRequest,
  found: readonly FounderClass[],
  looks: readonly Look[],
  lastLook: number,
): RestLearned {
  const {candidates, course, nowDays} = request;
  const lagDays = request.seasonLagDays ?? 0;
  const entries = restEntriesOf(candidates, found, lagDays);
  const priors = priorOf(candidates);
  const first = restingAtFirst(priors, entries, found);
  const atFirst = sumOf(first);
  const expected = restOf({atFirst, chance: atFirst, resting: first}, entries, found, course, nowDays);
  const wakesDays = expected.chill?.completeDays ?? Number.POSITIVE_INFINITY;
  const telling = looks.filter(({atDays}) => atDays <= wakesDays);
  const asFound = knownOf(request, found, telling, {entries});
  if (asFound.members.length === 0) return {rest: expected, asFound, notOut: null};

  const dated = sumOf(priors.filter((_, i) => !('undated' in candidates[i]!.profile)));
  const resting = restingNow(asFound.lines, candidates.length).map((share, i) =>
    'undated' in candidates[i]!.profile ? first[i]! : dated * share,
  );
  const late = leftOf(request, asFound, Math.min(lastLook, wakesDays), null);
  const house = late === null ? null : houseRestOf(candidates, found, lagDays);
  if (house !== null) return byTheHouse(request, {found, house, priors, asFound, looks: telling, lastLook});
  const dead = deadOf(request, asFound);
  const chance = late?.diapause ?? restRatherThanDeath(sumOf(resting), atFirst, dead);
  const rest = restOf({atFirst, chance, resting}, entries, found, course, nowDays);
  if (telling.length === looks.length || rest.chance >= MOSTLY) return {rest, asFound, notOut: late};
  const sinceThen = knownOf(request, found, looks, null);
  return {rest, asFound: sinceThen, notOut: leftOf(request, sinceThen, lastLook, rest.chance)};
}

interface LateByHouse {
  readonly found: readonly FounderClass[];
  readonly house: RestEntries;
  readonly priors: readonly number[];
  readonly asFound: KnownLot;
  readonly looks: readonly Look[];
  readonly lastLook: number;
}

/** A lot is late, and no profile says whether its animals rest: the house does. */
function byTheHouse(
  request: ForecastRequest,
  {found, house, priors, asFound, looks, lastLook}: LateByHouse,
): RestLearned {
  const {course, nowDays} = request;
  const first = restingAtFirst(priors, house, found);
  const atFirst = sumOf(first);
  const notOut = leftOf(request, asFound, lastLook, atFirst);
  const chance = notOut?.diapause ?? atFirst;
  const resting = first.map(share => (share * chance) / atFirst);
  const rest = restOf({atFirst, chance, resting}, house, found, course, nowDays);
  if (chance < MOSTLY) return {rest, asFound, notOut};
  return {rest, asFound: knownOf(request, found, looks, {entries: house}), notOut};
}

/** What those left of a lot are that is late; null where it is not. */
export function leftOf(
  request: ForecastRequest,
  known: KnownLot,
  lastLook: number,
  rests: number | null,
): NotOut | null {
  const {expected, members} = known;
  if (members.length === 0 || !isLateAt(expected, lastLook)) return null;
  const {sightings, alive} = request;
  const dead = Math.max(LEAST_DEAD, deadOf(request, known));
  return whyNotOut({lines: expected, sightings, lookDays: lastLook, left: alive, rests, dead});
}

function deadOf(request: ForecastRequest, {lines}: KnownLot): number {
  const survival = survivalOf(request, weightsOf(lines, request.candidates.length));
  return survival === null ? DEAD : 1 - survival;
}

/** As the candidates weigh before anything is seen. */
function priorOf(candidates: readonly Candidate[]): readonly number[] {
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  return candidates.map(({weight}) => weight / whole);
}

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, number) => sum + number, 0);
