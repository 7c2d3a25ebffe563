// A profile in figures: mean days at constant temperatures.
import type {Profile} from '../records/schema/index.ts';
import type {RoomState} from '../records/state.ts';
import {rateModel} from '../thermal/rate-model.ts';
import {fromMemory, profileCodes, profilesOf} from './profiles.ts';

export interface ProfileRow {
  readonly profile: string;
  readonly name: string;
  readonly rank: string;
  readonly rearing: readonly string[];
  /** From the first stage of the profile to the adult, at 20 °C; null where it does not develop there. */
  readonly daysAt20: number | null;
  readonly fromMemory: boolean;
}

/** Mean days by stage at each temperature asked for; null where nothing develops. */
export interface ConstantDays {
  readonly stage: string;
  readonly days: readonly (number | null)[];
}

export async function profileRows(state?: RoomState): Promise<ProfileRow[]> {
  const codes = await profileCodes(state);
  const profiles = await profilesOf(codes, state);
  return codes.flatMap(code => {
    const profile = profiles.get(code);
    return profile === undefined ? [] : [rowOf(profile)];
  });
}

/** A profile as a line of a list. */
export function rowOf(profile: Profile): ProfileRow {
  const days = constantDays(profile, [20]).map(({days}) => days[0] ?? null);
  return {
    profile: profile.profile,
    name: profile.name,
    rank: profile.rank,
    rearing: profile.rearing,
    daysAt20:
      days.length === 0
        ? null
        : days.reduce<number | null>((sum, each) => (sum === null || each === null ? null : sum + each), 0),
    fromMemory: fromMemory(profile),
  };
}

/** Of a group: of its middle member; nothing of a group without dates. */
export function constantDays(profile: Profile, temperaturesC: readonly number[]): ConstantDays[] {
  if ('undated' in profile) return [];
  if ('variation' in profile) {
    const {lnDaysAt20, lowerC} = profile.variation;
    const degreeDays = Math.exp(lnDaysAt20.mean) * (20 - lowerC.mean);
    return profile.stages.map(({stage, share}) => ({
      stage,
      days: temperaturesC.map(celsius => finite((share * degreeDays) / Math.max(0, celsius - lowerC.mean))),
    }));
  }
  return profile.stages.map(({stage, rate}) => {
    const model = rateModel(rate);
    return {stage, days: temperaturesC.map(celsius => finite(1 / model.ratePerDay(celsius)))};
  });
}

function finite(days: number): number | null {
  return Number.isFinite(days) ? days : null;
}
