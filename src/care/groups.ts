// The groups a lot belongs to, as rules name them.
import {heaviestFirst} from '../records/candidates.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot, Sample} from '../records/state.ts';

/** From narrow to wide; what a classification holds beyond these comes last. */
const RANKS = ['genus', 'family', 'guild', 'order'];

export interface Groups {
  /** Profiles of its candidates, the heaviest first. */
  readonly profiles: readonly string[];
  /** Nearest first: of the heaviest candidate its profile, family, order; of the next; the taxon as written; the method of its sample. */
  readonly groups: readonly string[];
}

export function groupsOf(
  lot: Lot,
  profiles: ReadonlyMap<string, Profile>,
  sample: Sample | undefined,
): Groups {
  const candidates = heaviestFirst(lot.candidates)
    .filter(({weight}) => weight > 0)
    .map(({profile}) => profile);
  const groups = candidates.flatMap(code => [code, ...classOf(profiles.get(code))]);
  if (lot.taxon !== undefined) groups.push(coded(lot.taxon));
  if (sample !== undefined) groups.push(sample.method);
  return {profiles: candidates, groups: [...new Set(groups)]};
}

/** The wider taxa of a profile, coded, from narrow to wide. */
export function classOf(profile: Profile | undefined): string[] {
  const entries = Object.entries(profile?.classification ?? {});
  const place = (rank: string) => (RANKS.includes(rank) ? RANKS.indexOf(rank) : RANKS.length);
  return entries.sort(([a], [b]) => place(a) - place(b)).map(([, name]) => coded(name));
}

/** Groups are coded by their Latin name in lower case. */
export function coded(name: string): string {
  return name.trim().toLowerCase().replaceAll(/\s+/g, '-');
}
