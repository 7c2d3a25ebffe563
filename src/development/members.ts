// The candidates of a lot as one set of members with weights.
import type {GroupProfile, TaxonProfile} from '../records/schema/index.ts';
import type {Temperatures} from './dose-course.ts';
import {type FounderClass, hasPlacesFor, missingStage} from './founders.ts';
import {type Member, membersOfGroup} from './group-members.ts';
import type {Candidate} from './request.ts';
import {type Chain, chainOfTaxon} from './stage-chain.ts';

/** A member of one of the candidates. */
export interface CandidateMember extends Member {
  /** Which candidate, in the order of the request. */
  readonly candidate: number;
  /** The share of each class of founders that rests; none where none does. */
  readonly rests: readonly number[];
  /** Its chain along what animals of other lots lived through. */
  readonly elsewhere: ReadonlyMap<string, Chain>;
}

const NOWHERE = new Map<string, never>();

export interface Members {
  readonly members: readonly CandidateMember[];
  /** Why a candidate is none: in plain sentences. */
  readonly unfit: readonly string[];
}

/**
 * Every member that has the stages the lot was found in; the weights of all sum to one. Of a group, members with too
 * few instars are left out and the others keep the group's weight; so are candidates that have no such member, and
 * those of which nothing is known in days.
 */
export function membersOf(
  candidates: readonly Candidate[],
  classes: readonly FounderClass[],
  course: Temperatures,
  elsewhere: ReadonlyMap<string, Temperatures> = NOWHERE,
): Members {
  const unfit: string[] = [];
  const members = candidates.flatMap(({profile, weight, ownPace}, candidate) => {
    if (weight === 0 || 'undated' in profile) return [];
    const all = membersOfCandidate(profile, ownPace, course);
    const fitting = all.filter(({chain}) => hasPlacesFor(chain, classes));
    if (fitting.length === 0) unfit.push(whyUnfit(profile.profile, all, classes));
    const sum = sumOf(fitting);
    const there = [...elsewhere].map(
      ([lot, theirs]) => [lot, membersOfCandidate(profile, ownPace, theirs)] as const,
    );
    return fitting.map(member => ({
      ...member,
      candidate,
      rests: [],
      elsewhere:
        there.length === 0
          ? NOWHERE
          : new Map(there.map(([lot, same]) => [lot, same[all.indexOf(member)]!.chain])),
      weight: (member.weight / sum) * weight,
    }));
  });
  const whole = sumOf(members);
  return {members: members.map(member => ({...member, weight: member.weight / whole})), unfit};
}

/** The founders as they are of a member: so many of each class rest. */
export function foundersOf(
  {rests}: Pick<CandidateMember, 'rests'>,
  classes: readonly FounderClass[],
): readonly FounderClass[] {
  return rests.length === 0 ? classes : classes.map((founders, c) => ({...founders, rests: rests[c]!}));
}

function sumOf(members: readonly Member[]): number {
  return members.reduce((sum, {weight}) => sum + weight, 0);
}

function membersOfCandidate(
  profile: TaxonProfile | GroupProfile,
  ownPace: Candidate['ownPace'],
  course: Temperatures,
): readonly Member[] {
  if ('variation' in profile) return membersOfGroup(profile, course);
  const {lnMean, sd} = ownPace ?? {lnMean: 0, sd: profile.paceSd};
  const chain = chainOfTaxon(profile, course);
  return [{chain, weight: 1, lnSpeedMean: lnMean, lnSpeedSd: sd, paceSd: sd}];
}

function whyUnfit(profile: string, members: readonly Member[], classes: readonly FounderClass[]): string {
  const chains = members.map(({chain}) => chain);
  if (chains.length === 0)
    return `No member of the group ${profile} develops at 20 °C, so it is left out: give it a lower threshold well below.`;
  const missing = missingStage(chains, classes) ?? classes.map(({stage}) => stage).join(' and ');
  const longest = chains.reduce((a, b) => (b.stages.length > a.stages.length ? b : a));
  const names = longest.stages.map(({name}) => name).join(', ');
  return `The profile ${profile} has no stage ${missing}, so it is left out: its stages are ${names}.`;
}
