// What a finished lot teaches of its profiles: how fast they went here, and how many came through.
import {borrowing} from './arena.ts';
import {classesOf} from './founders.ts';
import {learn} from './learning.ts';
import {looksOf} from './looks.ts';
import {membersOf} from './members.ts';
import {pacePieces} from './pace.ts';
import type {ForecastRequest} from './request.ts';

/** What one candidate turned out to be, given everything seen of the lot. */
export interface Lesson {
  readonly profile: string;
  readonly weight: number;
  /** ln of the pace against the published figures: mean and standard deviation, the published prior taken out. */
  readonly lnPace: {readonly mean: number; readonly sd: number} | null;
}

/** The candidates of a lot with what was learned of each, the heaviest first; none where nothing explains the lot. */
export function lessonsIn(request: ForecastRequest): readonly Lesson[] {
  return borrowing(() => lessonsOf(request));
}

function lessonsOf({
  lot = '',
  cohorts,
  candidates,
  course,
  sightings,
  nowDays,
}: ForecastRequest): readonly Lesson[] {
  const classes = classesOf(cohorts, false).filter(({atDays}) => atDays <= nowDays);
  if (classes.length === 0 || candidates.every(({weight}) => weight === 0)) return [];
  const startDays = Math.min(...classes.map(({atDays}) => atDays));
  const {members} = membersOf(candidates, classes, course);
  const looks = looksOf(sightings, nowDays);
  if (members.length === 0 || looks.length === 0) return [];
  const learned = learn({lot, members, classes, looks, startDays, hidden: false, alive: null});
  if (learned === null) return [];
  const whole = learned.lines.reduce(
    (sum, {points}) => sum + points.reduce((all, p) => all + p.weight, 0),
    0,
  );
  return candidates
    .map(({profile}, candidate): Lesson => {
      const lines = learned.lines.filter(({member}) => member.candidate === candidate);
      const pieces = lines.flatMap(pacePieces).filter(({weight}) => weight > 0);
      const weight = pieces.reduce((sum, piece) => sum + piece.weight, 0);
      const mean = pieces.reduce((sum, piece) => sum + piece.weight * piece.mean, 0) / weight;
      const variance =
        pieces.reduce((sum, piece) => sum + piece.weight * (piece.sd ** 2 + (piece.mean - mean) ** 2), 0) /
        weight;
      const lnPace = weight > 0 ? withoutPrior(mean, variance, profile.paceSd ** 2) : null;
      return {profile: profile.profile, weight: whole > 0 ? weight / whole : 0, lnPace};
    })
    .toSorted((a, b) => b.weight - a.weight);
}

/** Posterior = prior · likelihood, all normal: what the lot itself says. Null where it says next to nothing. */
function withoutPrior(mean: number, variance: number, prior: number): Lesson['lnPace'] {
  const precision = 1 / variance - 1 / prior;
  if (!(prior > 0) || precision < 0.25 / prior) return null;
  return {mean: mean / variance / precision, sd: Math.sqrt(1 / precision)};
}

/** A room's own pace of a profile, as a prior of the next lot. */
export interface OwnPace {
  readonly lnMean: number;
  /** Of the next lot about it. */
  readonly sd: number;
  readonly lots: number;
}

/** Of what lots differ in pace, this share is the room's (its strain, host and handling). Common practice, no source. */
const OF_THE_ROOM = 0.5;

/**
 * The room's pace over its finished lots, shrunk to the published one: the room's ln pace ~ N(0, half of σ²), each
 * lot's about it ~ N(·, the other half), what a lot says of its own with its own error.
 * @param paceSd σ of the profile
 */
export function ownPaceOf(said: readonly NonNullable<Lesson['lnPace']>[], paceSd: number): OwnPace | null {
  if (said.length === 0 || paceSd === 0) return null;
  const ofRoom = OF_THE_ROOM * paceSd ** 2;
  const ofLot = paceSd ** 2 - ofRoom;
  let precision = 1 / ofRoom;
  let sum = 0;
  for (const {mean, sd} of said) {
    const own = 1 / (sd ** 2 + ofLot);
    precision += own;
    sum += own * mean;
  }
  return {lnMean: sum / precision, sd: Math.sqrt(1 / precision + ofLot), lots: said.length};
}
