// The profiles a room can use: its own first, then the bundled ones.
import type {Profile} from '../records/schema/index.ts';
import type {RoomState} from '../records/state.ts';
import {bundledProfile, bundledProfileCodes} from '../room/package-files.ts';

/** A profile by its code; the room's own comes before a bundled one of the same code. */
export async function profileOf(code: string, state?: RoomState): Promise<Profile | undefined> {
  return state?.profiles.get(code) ?? (await bundledProfile(code));
}

/** Codes of every profile, in order of the alphabet. */
export async function profileCodes(state?: RoomState): Promise<string[]> {
  return [...new Set([...(state?.profiles.keys() ?? []), ...(await bundledProfileCodes())])].sort();
}

/** The profiles that these codes name; a code that names none is left out. */
export async function profilesOf(codes: Iterable<string>, state?: RoomState): Promise<Map<string, Profile>> {
  const found = await Promise.all(
    [...new Set(codes)].map(async code => [code, await profileOf(code, state)] as const),
  );
  return new Map(
    found.flatMap(([code, profile]) => (profile === undefined ? [] : [[code, profile] as const])),
  );
}

/** Does any figure of the profile come from memory? Then whoever uses it is told so. */
export function fromMemory({sources}: Profile): boolean {
  return sources.some(({provenance}) => provenance === 'from-memory');
}
