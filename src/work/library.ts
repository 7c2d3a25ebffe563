// Every profile at hand, for whoever leafs through them.
import type {Profile} from '../records/schema/index.ts';
import type {Desk} from './desk.ts';
import {type ProfileRow, rowOf} from './profile-tables.ts';
import {profileCodes, profilesOf} from './profiles.ts';

export interface LibraryEntry extends ProfileRow {
  readonly whole: Profile;
  /** The room's own, or its own version of a bundled one. */
  readonly own: boolean;
}

/** In order of the alphabet, the room's own first. */
export async function library({state}: Desk): Promise<LibraryEntry[]> {
  const codes = await profileCodes(state);
  const profiles = await profilesOf(codes, state);
  const entries = codes.flatMap(code => {
    const whole = profiles.get(code);
    return whole === undefined ? [] : [{...rowOf(whole), whole, own: state.profiles.has(code)}];
  });
  return [...entries.filter(({own}) => own), ...entries.filter(({own}) => !own)];
}
