// After a change: a copy of the new room.json, and what nobody needs any more cleared away.
import {Refusal} from '../records/refusal.ts';
import {keepBackup} from './backups.ts';
import {codeOf} from './disk-refusal.ts';
import type {RoomDocument} from './room-document.ts';
import {markReplaced, sweep} from './sweep.ts';

/**
 * Tidy up under the lock. The change is on disk already, so nothing that the disk refuses here takes it back: a
 * copy less is better than a person told that nothing was written.
 * @param replaced paths of documents that the room has just ceased to name
 */
export async function tidyUp(dir: string, room: RoomDocument, replaced: Iterable<string>): Promise<void> {
  const now = Date.now();
  try {
    await keepBackup(dir, now);
    await markReplaced(dir, replaced, now);
    await sweep(dir, room, now);
  } catch (error) {
    if (codeOf(error) === undefined && !(error instanceof Refusal)) throw error;
  }
}
