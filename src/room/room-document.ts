// What room.json holds: everything open, and the table of all other documents.
import type {Entry} from '../records/entry.ts';
import type {ImportBatch, Numbering} from './room.ts';

export interface RoomDocument {
  readonly name: string;
  /** IANA zone. */
  readonly zone: string;
  readonly created: {readonly at: string; readonly by: string};
  readonly next: Numbering;
  /** In the order of writing. */
  readonly entries: readonly Entry[];
  readonly imports: readonly ImportBatch[];
  readonly documents: readonly DocumentRow[];
}

/** One other document of the room: a file that never changes. */
export interface DocumentRow {
  /** Below the room's folder, with "/" between folders. */
  readonly path: string;
  /** Of the file's bytes, in hexadecimal. */
  readonly sha256: string;
  /** Readings, entries or names in it. */
  readonly rows: number;
  /** First and last instant of its readings, or of the writing of its entries; ISO 8601, UTC. */
  readonly from?: string | undefined;
  readonly to?: string | undefined;
}

export const ROOM_FILE = 'room.json';
export const BACKUPS = 'backups';
export const CACHE = 'cache';

/** room.json as read: its content, its checksum, and what a person should hear about it. */
export interface StoredRoom {
  readonly document: RoomDocument;
  readonly revision: string;
  readonly warnings: readonly string[];
}
