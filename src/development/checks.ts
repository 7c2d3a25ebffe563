// When to look for adults.

const BEFORE_FIRST_DAYS = 3;
/** So many adults, expected, may wait longer than the kind bears. */
const WAITING = 0.05;
/** A look this near to a round is that round. */
const SAME_ROUND_DAYS = 0.5;

/** The first look may not be later than this before one animal in twenty is out. */
const AT_THE_LATEST_DAYS = 1;
/** Rounds further apart than this have closed days between them. */
const NEXT_ROUND_DAYS = 1.25;

/**
 * Where checks begin: the last open round not after 3 days before one animal in twenty is out. Where closed days lie
 * between that round and those 3 days, the first round after them, if that is still 1 day before: nobody opens a
 * dark box for days on which nothing comes. A lot without such a round begins with its first. Rounds are those since
 * the lot began, in order of time.
 */
export function startChecking(p05Days: number | null, roundsDays: readonly number[]): number | null {
  if (p05Days === null) return null;
  const wanted = p05Days - BEFORE_FIRST_DAYS;
  const before = roundsDays.findLast(round => round <= wanted) ?? roundsDays[0] ?? null;
  if (before === null || wanted - before <= NEXT_ROUND_DAYS) return before;
  const after = roundsDays.find(round => round > wanted);
  return after !== undefined && after <= p05Days - AT_THE_LATEST_DAYS ? after : before;
}

export interface CheckPlan {
  readonly startDays: number | null;
  readonly looksDays: readonly number[];
  readonly roundsDays: readonly number[];
  /** For each round, the last instant of its opening at which somebody may still begin to look; absent: the rounds alone. */
  readonly closesDays?: readonly number[] | undefined;
  /** How long an adult may wait unseen. */
  readonly holdDays: number;
  /** Adults expected out between two instants. */
  readonly expectedBetween: (fromDays: number, toDays: number) => number;
}

/**
 * The next check: the last open round that is no further from the round last looked at than an adult may wait, and
 * leaves no more than 0.05 adults waiting longer; where no round is that near, the last moment of opening hours that is;
 * else the first open round there is. In the past it is overdue.
 */
export function nextCheck({
  startDays,
  looksDays,
  roundsDays,
  closesDays = roundsDays,
  holdDays,
  expectedBetween,
}: CheckPlan) {
  if (startDays === null) return null;
  const lastLook = looksDays.at(-1);
  if (lastLook === undefined) return startDays;
  const done = roundOf(lastLook, roundsDays);
  if (done < startDays) return startDays;
  const open = roundsDays.filter(round => round > Math.max(done, lastLook));
  const inTime = open.filter(
    round => round <= done + holdDays && expectedBetween(lastLook, round - holdDays) <= WAITING,
  );
  if (inTime.length > 0) return inTime.at(-1)!;
  const looked = Math.max(done, lastLook);
  const opening = roundsDays.findLastIndex(round => round <= looked + holdDays);
  const closing = opening < 0 ? 0 : Math.min(looked + holdDays, closesDays[opening]!);
  const noRoundIsNear = open[0] === undefined || open[0] > looked + holdDays;
  return noRoundIsNear && closing >= looked + SOONEST_SHARE * holdDays ? closing : (open[0] ?? null);
}

/** A second look on one day comes no sooner than after this share of the hold time. Common practice, no source. */
export const SOONEST_SHARE = 0.25;

/** The round that a look was, or the look itself where none is near. */
function roundOf(lookDays: number, roundsDays: readonly number[]): number {
  const near = roundsDays.filter(round => Math.abs(round - lookDays) <= SAME_ROUND_DAYS);
  if (near.length === 0) return lookDays;
  return near.reduce((a, b) => (Math.abs(b - lookDays) < Math.abs(a - lookDays) ? b : a));
}
