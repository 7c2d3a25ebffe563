// room.json: read by its checksum, checked with zod only where that is not ours, written in one piece.
import {stat} from 'node:fs/promises';
import {basename, dirname, join} from 'node:path';
import {Low} from 'lowdb';
import {Refusal} from '../records/refusal.ts';
import {codeOf, diskRefusal} from './disk-refusal.ts';
import {DurableAdapter, type Form} from './durable-adapter.ts';
import {BACKUPS, ROOM_FILE, type RoomDocument, type StoredRoom} from './room-document.ts';
import {seal, sha256, unseal} from './sealed.ts';

/**
 * Read room.json or a backup of it.
 * @throws Refusal where there is none, where it cannot be read, or where it is damaged
 */
export async function readRoomFile(path: string): Promise<StoredRoom> {
  const file = new Low<StoredRoom | null>(new DurableAdapter(path, formAt(path)), null);
  await file.read().catch(error => Promise.reject(diskRefusal(error, path)));
  if (file.data === null) throw await nothingThere(path);
  return file.data;
}

/**
 * Put a new room.json in the place of the old one: the room's one commit point.
 * @param beforeRename the last moment to call it off, by throwing
 */
export async function writeRoomFile(
  path: string,
  document: RoomDocument,
  beforeRename?: () => Promise<void>,
): Promise<void> {
  const adapter = new DurableAdapter(path, formAt(path), beforeRename);
  const file = new Low<StoredRoom | null>(adapter, {document, revision: '', warnings: []});
  await file.write().catch(error => Promise.reject(diskRefusal(error, path)));
}

/** The revision that a document has once it is written. */
export function revisionOf(document: RoomDocument): string {
  return sha256(JSON.stringify(document));
}

/** Tells one version of a file from the next without reading it; `none` where there is no file. */
export async function signatureOf(path: string): Promise<string> {
  try {
    const {ino, size, mtimeNs} = await stat(path, {bigint: true});
    return `${ino}-${size}-${mtimeNs}`;
  } catch (error) {
    if (codeOf(error) === 'ENOENT') return 'none';
    throw diskRefusal(error, path);
  }
}

function formAt(path: string): Form<StoredRoom> {
  return {
    write: ({document}) => seal(document),
    async read(bytes) {
      const sealed = unseal<RoomDocument>(bytes);
      if (sealed !== undefined) return {document: sealed.content, revision: sealed.sha256, warnings: []};
      const {checkRoom} = await import('./room-check.ts');
      return checkRoom(bytes, path);
    },
  };
}

async function nothingThere(path: string): Promise<Refusal> {
  const dir = dirname(path);
  if (basename(path) !== ROOM_FILE) return new Refusal('there is no such file', path, 'Check its name.');
  if ((await signatureOf(join(dir, BACKUPS))) !== 'none')
    return new Refusal(
      'room.json is missing',
      dir,
      'Run teneral restore to go back to the newest sound copy.',
    );
  const what =
    (await signatureOf(dir)) === 'none' ? 'there is no such folder' : 'there is no room in this folder';
  return new Refusal(what, dir, 'Make a room with teneral init, or name yours with --room.');
}
