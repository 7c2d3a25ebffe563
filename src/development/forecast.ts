// When the adults of a lot emerge, and how sure that is: the model put together.
import type {EmergenceDay, ForecastStatus, LotForecast, Quantiles} from './answer.ts';
import {borrowing} from './arena.ts';
import {assumptionsOf, LATE} from './assumptions.ts';
import {nextCheck, startChecking} from './checks.ts';
import {degreeDayStanding} from './degree-day-standing.ts';
import {knownUntil} from './dose-course.ts';
import {doubtsOf} from './doubts.ts';
import {type CurvesAhead, emergenceCurves} from './emergence-curve.ts';
import {classesOf, type FounderClass} from './founders.ts';
import {type KnownLot, knownOf, survivalOf, WORTH_TELLING, weightsOf} from './known-lot.ts';
import {looksOf} from './looks.ts';
import {moultsToGo} from './moults.ts';
import {paceOf} from './pace.ts';
import {ANY_STAGE} from './places.ts';
import {prospectsOf} from './prospects.ts';
import {type Curve, instantOf, quantilesOf, type Span, windowOf} from './quantiles.ts';
import type {Candidate, ForecastRequest} from './request.ts';
import {MOSTLY, NO_REST, rested, restSentences} from './rest.ts';
import {leftOf, restLearned} from './rest-learned.ts';
import {fromTheStart} from './scenario.ts';
import {stageShares} from './stage-shares.ts';
import {STATISTICS} from './statistics.ts';

/** Days with less than this chance of an adult are not listed. */
const WORTH_NAMING = 1e-6;
const HOURS_A_DAY = 24;
/** Of animals that rest, so many wait for a second winter where no profile says. Common practice, no source. */
const SECOND_YEAR = 0.1;

/**
 * The forecast of one lot: predictive over candidates, members, brood ages, pace and spread. Deterministic.
 */
export function forecastLot(request: ForecastRequest): LotForecast {
  return borrowing(() => forecastOf(request));
}

function forecastOf(request: ForecastRequest): LotForecast {
  const {cohorts, candidates, course, nowDays, alive, closed, sightings} = request;
  if (closed || alive === 0) return empty(request, 'finished', []);
  const hidden = alive === null;
  const found = classesOf(cohorts, hidden).filter(({atDays}) => atDays <= nowDays);
  if (found.length === 0)
    return empty(request, 'unknown', ['No animals are recorded: say how many there are in which stage.']);
  if (candidates.every(({weight}) => weight === 0))
    return empty(request, 'unknown', [
      'No profile says how fast they develop: a candidate, even only an order or a guild, would give dates.',
    ]);

  const looks = looksOf(hidden ? sightings.filter(({kind}) => kind !== 'removal') : sightings, nowDays);
  const lastLook = request.looksDays.at(-1) ?? Math.min(...found.map(({atDays}) => atDays));
  const resting = restLearned(request, found, looks, lastLook);
  const {rest, asFound} = resting;
  const rests = rest.chance >= MOSTLY;
  const wakesDays = rest.chill?.completeDays ?? null;
  if (rests && wakesDays === null)
    return {
      ...(resting.notOut === null
        ? empty(request, 'unknown', restSentences(rest))
        : empty(request, 'late', [LATE, ...restSentences(rest)])),
      rest,
      notOut: resting.notOut,
      ...(asFound.learned === null ? {stagesNow: sharesFound(found)} : learnedOf(asFound, request)),
    };
  const known =
    rests && wakesDays !== null
      ? knownOf(request, rested(found), looks, {restUntilDays: wakesDays})
      : asFound;
  const {classes, startDays, members, unfit, learned, lines} = known;
  const moults = moultsToGo(candidates, classes, sightings);
  if (members.length === 0) return empty(request, 'unknown', [...moults, ...unfit]);
  const courseEnds = course.atDays.at(-1) ?? startDays;
  const span = {fromDays: startDays, untilDays: Math.min(courseEnds, knownUntil(course, startDays))};
  const wanted = hidden ? (['animal'] as const) : STATISTICS;
  const instants = [nowDays, ...Array.from(request.sharesAtDays)];
  const prospects = prospectsOf(lines, wanted, instants);
  const ahead = emergenceCurves(lines, prospects, span, wanted);
  const {curves} = ahead;
  const animalCurve: Curve = atDays => curves('animal', atDays);
  const animal = quantilesOf(animalCurve, span);
  const weights = weightsOf(lines, candidates.length);
  const survival = survivalOf(request, weights);
  const comeOn = alive === null ? null : alive * (rests ? 1 : 1 - rest.chance);
  const expectedOf = (chance: number) => (comeOn === null ? null : comeOn * (survival ?? 1) * chance);
  const outBy = (atDays: number) => animalCurve(Math.min(atDays, span.untilDays));
  const rounds = request.roundsDays.filter(round => round >= startDays);
  const starts = startChecking(animal.p05, rounds);
  const lastSeen = learned === null ? startDays : looks.at(-1)!.atDays;
  const past = learned !== null && instants.some(atDays => atDays < lastSeen);
  const pastLines = past ? fromTheStart(lines, classes, startDays) : [];
  const pastProspects = prospectsOf(pastLines, [], past ? instants : []);
  const sharesAt = (instant: number) =>
    past && instants[instant]! < lastSeen
      ? stageShares(pastLines, pastProspects, instant)
      : stageShares(lines, prospects, instant);
  const notOut = rests ? leftOf(request, known, lastLook, rest.secondYear ?? SECOND_YEAR) : resting.notOut;
  const isLate = notOut !== null;
  const temperatureUnknown = span.untilDays < courseEnds && animal.p95 === null;

  return {
    status: statusOf(request, animal, temperatureUnknown, isLate),
    alive,
    stagesNow: sharesAt(0),
    stageShares: Array.from(request.sharesAtDays, (atDays, i) => ({atDays, shares: sharesAt(1 + i)})),
    degreeDays: degreeDayStanding(lines, nowDays),
    expected: expectedOf(animalCurve(span.untilDays)),
    animal,
    outBy: (request.outAtDays ?? []).map(atDays => ({
      atDays,
      animal: outBy(atDays),
      first: hidden ? null : curves('first', Math.min(atDays, span.untilDays)),
    })),
    atChances: (request.chances ?? []).map(chance => instantOf(animalCurve, chance, span)),
    inFutures: (request.inFutures ?? []).map(({future, chance}) =>
      future < ahead.futures
        ? instantOf(atDays => ahead.inFuture(future, 'animal', atDays), chance, span)
        : null,
    ),
    first: hidden ? null : windowOf(atDays => curves('first', atDays), span),
    half: hidden ? null : windowOf(atDays => curves('half', atDays), span),
    last: hidden ? null : windowOf(atDays => curves('last', atDays), span),
    perDay: daysOf(request.dayBoundsDays, animalCurve, span, expectedOf),
    sexes: sexesOf(candidates, weights, ahead, lastSeen, span),
    pace: paceOf(lines),
    candidates: withUndated(candidates, weights),
    rest,
    notOut,
    startCheckingDays: starts,
    nextCheckDays: nextCheck({
      startDays: starts,
      looksDays: request.looksDays,
      roundsDays: rounds,
      closesDays: request.closesDays?.slice(-rounds.length),
      holdDays: request.holdHours / HOURS_A_DAY,
      expectedBetween: (from, to) => (comeOn ?? 1) * Math.max(0, outBy(to) - outBy(from)),
    }),
    doubts: request.doubts === true ? doubtsOf(lines, mediansOf(ahead, span)) : null,
    leftOut: learned?.leftOut ?? [],
    assumptions: [
      ...moults,
      ...unfit,
      ...restSentences(rest),
      ...assumptionsOf({
        fromMemory: candidates.flatMap(({profile, weight}) =>
          weight > 0 && profile.sources.some(({provenance}) => provenance === 'from-memory')
            ? [profile.profile]
            : [],
        ),
        hidden,
        survivalKnown: survival !== null,
        ownSurvival: request.survival,
        late: isLate,
        temperatureUnknown,
        withinHorizon: animalCurve(span.untilDays),
        outUnseen: outBy(nowDays) - outBy(lastLook),
        instarUnknown: classes.some(({stage}) => stage === 'larva' || stage === 'nymph'),
        outOfHidden: hidden && sightings.some(({kind}) => kind === 'emergence'),
        unexplained: looks.length > 0 && learned === null,
        leftOut: learned?.leftOut.length ?? 0,
      }),
    ],
  };
}

/** What is known of animals without dates. */
function learnedOf(
  {lines, learned}: KnownLot,
  {candidates, nowDays}: ForecastRequest,
): Pick<LotForecast, 'stagesNow' | 'pace' | 'candidates' | 'leftOut'> {
  return {
    stagesNow: stageShares(lines, prospectsOf(lines, [], [nowDays]), 0),
    pace: paceOf(lines),
    candidates: withUndated(candidates, weightsOf(lines, candidates.length)),
    leftOut: learned?.leftOut ?? [],
  };
}

function statusOf(
  {nowDays, sightings}: ForecastRequest,
  animal: Quantiles,
  temperatureUnknown: boolean,
  late: boolean,
): ForecastStatus {
  if (temperatureUnknown) return 'unknown';
  if (late) return 'late';
  if (sightings.some(({kind}) => kind === 'emergence')) return 'emerging';
  return animal.p05 !== null && nowDays >= animal.p05 - 1 ? 'due' : 'developing';
}

/** When half of the animals are out in each of the futures, as far as they are within the horizon. */
function mediansOf({futures, inFuture}: CurvesAhead, span: Span): readonly number[] {
  return Array.from({length: futures}, (_, future) =>
    instantOf(atDays => inFuture(future, 'animal', atDays), 0.5, span),
  ).flatMap(atDays => atDays ?? []);
}

function sexesOf(
  candidates: readonly Candidate[],
  weights: readonly number[],
  {needing}: CurvesAhead,
  sinceDays: number,
  span: Span,
): LotForecast['sexes'] {
  if (!candidates.some(({profile: {sexes}}, i) => sexes !== undefined && weights[i]! >= WORTH_TELLING))
    return null;
  const windowFor = (sex: 'female' | 'male') =>
    windowOf(
      needing(candidate => candidates[candidate]?.profile.sexes?.[sex] ?? 1, sinceDays),
      span,
    );
  return {female: windowFor('female'), male: windowFor('male')};
}

/** Animals that have not begun to develop are in the stages in which they were found. */
function sharesFound(found: readonly FounderClass[]): LotForecast['stagesNow'] {
  const all = found.reduce((sum, {count}) => sum + count, 0);
  const shares: Record<string, number> = {};
  for (const {stage, count} of found)
    if (stage !== ANY_STAGE) shares[stage] = (shares[stage] ?? 0) + count / all;
  return shares;
}

/** Nothing that is seen of days weighs a candidate without dates: it keeps its share, and the others share the rest. */
function withUndated(
  candidates: ForecastRequest['candidates'],
  weights: readonly number[],
): LotForecast['candidates'] {
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  const shares = candidates.map(({profile, weight}) => ('undated' in profile ? weight / whole : 0));
  const rest = 1 - shares.reduce((sum, share) => sum + share, 0);
  return candidates.map(({profile}, i) => ({
    profile: profile.profile,
    weight: 'undated' in profile ? shares[i]! : rest * weights[i]!,
  }));
}

function daysOf(
  bounds: ArrayLike<number>,
  animal: Curve,
  {untilDays}: Span,
  expectedOf: (chance: number) => number | null,
): EmergenceDay[] {
  const days: EmergenceDay[] = [];
  const shareAt = (atDays: number) => animal(Math.min(atDays, untilDays));
  let before = bounds.length === 0 ? 0 : shareAt(bounds[0]!);
  for (let i = 0; i + 1 < bounds.length; i++) {
    const fromDays = bounds[i]!;
    const toDays = bounds[i + 1]!;
    const after = shareAt(toDays);
    const probability = Math.max(0, after - before);
    if (probability > WORTH_NAMING)
      days.push({fromDays, toDays, probability, expected: expectedOf(probability)});
    before = after;
  }
  return days;
}

const NOTHING: Quantiles = {p05: null, p10: null, p25: null, p50: null, p75: null, p90: null, p95: null};

/** A forecast that says nothing but why. */
function empty(
  {alive, candidates, sharesAtDays, chances = [], inFutures = []}: ForecastRequest,
  status: 'finished' | 'late' | 'unknown',
  assumptions: readonly string[],
): LotForecast {
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  return {
    status,
    alive,
    stagesNow: {},
    stageShares: Array.from(sharesAtDays, atDays => ({atDays, shares: {}})),
    outBy: [],
    degreeDays: null,
    expected: alive === null ? null : 0,
    animal: NOTHING,
    atChances: chances.map(() => null),
    inFutures: inFutures.map(() => null),
    first: null,
    half: null,
    last: null,
    perDay: [],
    sexes: null,
    pace: null,
    candidates: candidates.map(({profile, weight}) => ({
      profile: profile.profile,
      weight: whole === 0 ? 0 : weight / whole,
    })),
    rest: NO_REST,
    notOut: null,
    startCheckingDays: null,
    nextCheckDays: null,
    doubts: null,
    leftOut: [],
    assumptions,
  };
}
