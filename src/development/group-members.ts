// A group profile as a fixed set of members: what an animal known only to the order, family or guild may be.
import type {GroupProfile} from '../records/schema/index.ts';
import type {Stage} from '../records/stage.ts';
import type {Temperatures} from './dose-course.ts';
import {keptAlong} from './kept-along.ts';
import {normalPoints} from './normal.ts';
import {type Chain, chainOf, stageAlong} from './stage-chain.ts';

/** One kind of animal that a candidate may turn out to be. */
export interface Member {
  readonly chain: Chain;
  readonly weight: number;
  /** ln of how fast a lot of it goes ~ normal(lnSpeedMean, lnSpeedSd): its pace, and for a group how fast the member is. */
  readonly lnSpeedMean: number;
  readonly lnSpeedSd: number;
  /** The part of that which is pace. */
  readonly paceSd: number;
}

/** How fast a lot of a member goes at a pace so many standard deviations from its mean. */
export function speedAt({lnSpeedMean, lnSpeedSd}: Member, z: number): number {
  return Math.exp(lnSpeedMean + lnSpeedSd * z);
}

/** Each instar of a larva or nymph takes this much longer than the one before; common practice, no source. */
const INSTAR_RATIO = 1.3;
/** Thresholds nearer than this to 20 °C would leave next to no degree-days at 20 °C; such members are left out. */
const HIGHEST_THRESHOLD_C = 18.5;

/**
 * The members: thresholds T0 on points of their distribution, each with every number of instars of the range. The
 * days at 20 °C given T0 are not cut into points: multiplying them is dividing the pace, so they widen each member's
 * speed (normal with normal is normal) and are integrated with it. The constant is days · (20 − T0), its stages
 * have the group's shares of time; the spread of the stages is what makes egg to adult vary as stated.
 */
export const membersOfGroup = keptAlong((profile: GroupProfile, course): readonly Member[] => {
  const {lnDaysAt20, lowerC, correlation, cv} = profile.variation;
  const givenThreshold = lnDaysAt20.sd * Math.sqrt(1 - correlation ** 2);
  const lnSpeedSd = Math.hypot(givenThreshold, profile.paceSd);
  const thresholds = lowerC.sd === 0 ? [{z: 0, weight: 1}] : normalPoints(2.5, 1.25);

  return instarNumbers(profile).flatMap(instars =>
    thresholds.flatMap(({z, weight}) => {
      const lower = lowerC.mean + z * lowerC.sd;
      if (lower > HIGHEST_THRESHOLD_C) return [];
      const days = Math.exp(lnDaysAt20.mean + correlation * lnDaysAt20.sd * z);
      const chain = memberChain(profile, instars, lower, days * (20 - lower), cv, course);
      return [{chain, weight, lnSpeedMean: 0, lnSpeedSd, paceSd: profile.paceSd}];
    }),
  );
});

function memberChain(
  {stages}: GroupProfile,
  instars: number,
  lower: number,
  constant: number,
  cv: number,
  course: Temperatures,
): Chain {
  const parts = stages.flatMap(({stage, share, instars: range}) =>
    range === undefined ? [{name: stage, share}] : instarsOf(stage, share, instars),
  );
  // Independent stages of shares s and equal cv c sum to a cv of c · √Σs².
  const each = cv / Math.sqrt(parts.reduce((sum, {share}) => sum + share * share, 0));
  return chainOf(
    parts.map(({name, share}) =>
      stageAlong(
        course,
        name,
        {kind: 'degree-day', lower, degreeDays: constant * share},
        {family: 'lognormal', cv: each},
      ),
    ),
  );
}

function instarsOf(stage: Stage, share: number, instars: number): {name: Stage; share: number}[] {
  const lengths = Array.from({length: instars}, (_, i) => INSTAR_RATIO ** i);
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  return lengths.map((length, i) => ({name: `${stage}-${i + 1}`, share: (share * length) / whole}));
}

/** Every number of instars the range holds, each as likely; one stage of a group at most has them. */
function instarNumbers({stages}: GroupProfile): readonly number[] {
  const [from, to] = stages.find(({instars}) => instars !== undefined)?.instars ?? [1, 1];
  return Array.from({length: to - from + 1}, (_, i) => from + i);
}
