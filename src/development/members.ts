// The candidates of a lot as one set of members with weights.
import {Refusal} from '../records/refusal.ts';
import type {Temperatures} from './dose-course.ts';
import {type FounderClass, hasPlacesFor, refusePlaces} from './founders.ts';
import {type Member, membersOfGroup} from './group-members.ts';
import type {Candidate} from './request.ts';
import {chainOfTaxon} from './stage-chain.ts';

/** A member of one of the candidates. */
export interface CandidateMember extends Member {
  /** Which candidate, in the order of the request. */
  readonly candidate: number;
}

/**
 * Every member that has the stages the lot was found in; the weights of all sum to one. Of a group, members with too
 * few instars are left out and the others keep the group's weight.
 * @throws Refusal where a candidate has no member with these stages
 */
export function membersOf(
  lot: string,
  candidates: readonly Candidate[],
  classes: readonly FounderClass[],
  course: Temperatures,
): readonly CandidateMember[] {
  const whole = candidates.reduce((sum, {weight}) => sum + weight, 0);
  return candidates.flatMap(({profile, weight}, candidate) => {
    if (weight === 0) return [];
    const all = membersOfCandidate({profile, weight}, course);
    const fitting = all.filter(({chain}) => hasPlacesFor(chain, classes));
    if (fitting.length === 0)
      refusePlaces(
        lot,
        profile.profile,
        all.map(({chain}) => chain),
        classes,
      );
    const sum = fitting.reduce((total, member) => total + member.weight, 0);
    return fitting.map(member => ({
      ...member,
      candidate,
      weight: ((member.weight / sum) * weight) / whole,
    }));
  });
}

function membersOfCandidate({profile}: Candidate, course: Temperatures): readonly Member[] {
  if (!('variation' in profile)) {
    const {paceSd} = profile;
    return [{chain: chainOfTaxon(profile, course), weight: 1, lnSpeedSd: paceSd, paceSd}];
  }
  const members = membersOfGroup(profile, course);
  if (members.length > 0) return members;
  throw new Refusal(
    `the group profile ${profile.profile} leaves no member that develops at 20 °C`,
    'variation.lowerC',
    'Give a lower threshold well below 20 °C.',
  );
}
