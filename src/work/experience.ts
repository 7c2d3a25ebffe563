// What a room's finished lots say of the profiles of another lot: pace and survival of its own.
import {type Lesson, type OwnPace, ownPaceOf} from '../development/lesson.ts';
import {heaviestFirst} from '../records/candidates.ts';
import type {Instant} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot} from '../records/state.ts';

/** What one finished lot taught. */
export interface LotLesson {
  readonly lot: string;
  /** When the last of it was written down. */
  readonly knownAt: Instant;
  /** The heaviest first, given everything seen of the lot. */
  readonly candidates: readonly Lesson[];
  /** Animals that might have emerged here, and those that did. */
  readonly came: number;
  readonly emerged: number;
}

export interface Experience {
  readonly profile: string;
  /** Null where its finished lots say too little, and for a group, whose members are too unlike. */
  readonly pace: OwnPace | null;
  readonly survival: {readonly share: number; readonly emerged: number; readonly came: number} | null;
}

/** A lot counts for the profile that it most likely was. */
const LIKELY = 0.5;
/** Fewer animals say nothing of survival. Common practice, no source. */
const ENOUGH_ANIMALS = 10;
/** A published survival weighs as much as so many animals of one's own. Common practice, no source. */
const PUBLISHED_WEIGHS = 10;

/** What is known of a lot's candidates, the heaviest first; those of which nothing is known too. */
export function experienceOf(
  {code, candidates}: Pick<Lot, 'code' | 'candidates'>,
  profiles: ReadonlyMap<string, Profile>,
  lessons: readonly LotLesson[],
): Experience[] {
  return heaviestFirst(candidates).flatMap(({profile: name}) => {
    const profile = profiles.get(name);
    if (profile === undefined) return [];
    const own = lessons.filter(({lot, candidates: [likeliest]}) => lot !== code && isOf(likeliest, name));
    return [{profile: name, pace: paceFrom(own, profile), survival: survivalFrom(own, profile)}];
  });
}

function isOf(likeliest: Lesson | undefined, profile: string): boolean {
  return likeliest !== undefined && likeliest.profile === profile && likeliest.weight >= LIKELY;
}

function paceFrom(own: readonly LotLesson[], profile: Profile): OwnPace | null {
  if ('variation' in profile) return null;
  return ownPaceOf(
    own.flatMap(({candidates: [likeliest]}) => likeliest?.lnPace ?? []),
    profile.paceSd,
  );
}

function survivalFrom(own: readonly LotLesson[], profile: Profile): Experience['survival'] {
  const came = own.reduce((sum, each) => sum + each.came, 0);
  const emerged = own.reduce((sum, each) => sum + each.emerged, 0);
  if (came < ENOUGH_ANIMALS) return null;
  const weight = profile.survival === undefined ? 0 : PUBLISHED_WEIGHS;
  const share = (emerged + weight * (profile.survival ?? 0)) / (came + weight);
  return {share, emerged, came};
}
