// A profile against its own published figures: recomputed, with what deviates and what looks wrong.
import {type Doubt, profileDoubts} from '../records/profile-doubts.ts';
import type {Profile, TaxonProfile} from '../records/schema/index.ts';
import {compareStages} from '../records/stage.ts';
import type {RoomState} from '../records/state.ts';
import {rateModel} from '../thermal/rate-model.ts';
import {profileCodes, profilesOf} from './profiles.ts';

export interface Deviation {
  /** "pupa", or "egg to pupa" over several. */
  readonly stage: string;
  readonly temperature: number;
  /** As published. */
  readonly days: number;
  /** By the profile's own rates; null where it says that nothing develops. */
  readonly recomputed: number | null;
  /** Recomputed over published, less 1; null where nothing develops. */
  readonly deviation: number | null;
}

/** As `teneral profile check` answers. */
export interface ProfileCheck {
  readonly profile: string;
  readonly name: string;
  /** Nothing in it looks wrong, and no published figure is missed by more than the bound. */
  readonly sound: boolean;
  readonly doubts: readonly Doubt[];
  readonly deviations: readonly Deviation[];
  /** Mean and largest size of the deviations; null without published figures. */
  readonly meanDeviation: number | null;
  readonly largestDeviation: number | null;
}

/**
 * How far a rate may lie from a figure it was made of or checked against. A table goes through its points; a straight
 * line misses published means by a tenth as a rule, most near its threshold.
 */
export const LARGEST_DEVIATION = 0.35;

/** Every profile at hand, or those of these codes. */
export async function checkedProfiles(codes: readonly string[], state?: RoomState): Promise<ProfileCheck[]> {
  const wanted = codes.length === 0 ? await profileCodes(state) : codes;
  const profiles = await profilesOf(wanted, state);
  return wanted.flatMap(code => {
    const profile = profiles.get(code);
    return profile === undefined ? [] : [checkedProfile(profile)];
  });
}

export function checkedProfile(profile: Profile): ProfileCheck {
  const deviations = 'variation' in profile || 'undated' in profile ? [] : deviationsOf(profile);
  const sizes = deviations.map(({deviation}) => (deviation === null ? 1 : Math.abs(deviation)));
  const largest = sizes.length === 0 ? null : Math.max(...sizes);
  const doubts = [...profileDoubts(profile), ...missed(deviations)];
  return {
    profile: profile.profile,
    name: profile.name,
    sound: doubts.length === 0,
    doubts,
    deviations,
    meanDeviation: sizes.length === 0 ? null : sizes.reduce((sum, size) => sum + size, 0) / sizes.length,
    largestDeviation: largest,
  };
}

/** Every point of the profile's tables and of what it says was published, recomputed. */
function deviationsOf(profile: TaxonProfile): Deviation[] {
  const own = profile.stages.flatMap(({stage, rate}) =>
    rate.kind === 'table' ? [{from: stage, to: stage, points: rate.points}] : [],
  );
  return [...own, ...(profile.published ?? [])].flatMap(({from, to, points}) => {
    const daysAt = daysOver(profile, from, to);
    return points.map(({temperature, days}) => {
      const recomputed = daysAt(temperature);
      return {
        stage: from === to ? from : `${from} to ${to}`,
        temperature,
        days,
        recomputed,
        deviation: recomputed === null ? null : recomputed / days - 1,
      };
    });
  });
}

/** Mean days from the beginning of one stage to the end of another at a constant temperature. */
function daysOver({stages}: TaxonProfile, from: string, to: string): (temperatureC: number) => number | null {
  const models = stages
    .filter(({stage}) => compareStages(stage, from) >= 0 && compareStages(stage, to) <= 0)
    .map(({rate}) => rateModel(rate));
  return temperatureC => {
    const days = models.reduce((sum, {ratePerDay}) => sum + 1 / ratePerDay(temperatureC), 0);
    return Number.isFinite(days) ? days : null;
  };
}

function missed(deviations: readonly Deviation[]): Doubt[] {
  return deviations
    .filter(({deviation}) => deviation === null || Math.abs(deviation) > LARGEST_DEVIATION)
    .map(({stage, temperature, days, recomputed}) => ({
      field: `published ${stage} at ${temperature} °C`,
      why:
        recomputed === null
          ? `${days} days are published, but by the profile nothing develops there`
          : `${days} days are published, ${recomputed.toFixed(1)} recomputed`,
    }));
}
