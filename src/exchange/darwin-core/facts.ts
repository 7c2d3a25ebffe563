// What an archive is made of: the room as it is known at an instant.
import type {Civil} from '../../records/civil.ts';
import type {RoomState} from '../../records/state.ts';
import type {IdentifierOf} from './identifiers.ts';

export interface ArchiveFacts {
  readonly state: RoomState;
  readonly civil: Civil;
  readonly idOf: IdentifierOf;
  /** A licence's address, for every record; undefined where none was chosen. */
  readonly licence?: string | undefined;
  /** What the animals of lots lived in, by the code of the lot. */
  readonly warmth: ReadonlyMap<string, LivedWarmth>;
}

/** The temperature of a lot's units from its beginning to its end or to now. */
export interface LivedWarmth {
  readonly minimumC: number;
  readonly meanC: number;
  readonly maximumC: number;
  /** What it rests on, in words. */
  readonly basis: string;
}
