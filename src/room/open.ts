// A room opened: what is open is read at once, everything else when it is asked for.
import {join} from 'node:path';
import {MS_PER_DAY} from '../records/entry.ts';
import {readingsOf} from './document-path.ts';
import {DocumentMissing} from './documents.ts';
import {loggerSeries} from './logger-series.ts';
import type {LoggerSpan, Room} from './room.ts';
import {ROOM_FILE, type RoomDocument, type StoredRoom} from './room-document.ts';
import {readRoomFile} from './room-file.ts';
import {entriesWith, everyEntry} from './stored-entries.ts';

/**
 * Open the room in a folder.
 * @throws Refusal where there is no room, where it cannot be read, or where it is damaged
 */
export async function openRoom(dir: string): Promise<Room> {
  return roomOf(dir, await readRoomFile(join(dir, ROOM_FILE)));
}

/** A room as its file says. */
export function roomOf(dir: string, stored: StoredRoom): Room {
  const {document, revision, warnings} = stored;
  const ask = <Answer>(question: (document: RoomDocument) => Promise<Answer>) =>
    patiently(dir, stored, question);
  return {
    dir,
    name: document.name,
    zone: document.zone,
    revision,
    warnings,
    next: document.next,
    entries: document.entries,
    imports: document.imports,
    allEntries: () => ask(room => everyEntry(dir, room)),
    entriesWith: names => ask(room => entriesWith(dir, room, names)),
    series: (logger, fromDays, toDays, importedBy) =>
      ask(room => loggerSeries(dir, room, logger, fromDays, toDays, importedBy)),
    span: logger => spanOf(document, logger),
  };
}

/**
 * A document may have gone because a later change replaced it: then the newest room.json is asked instead.
 * What an older one named stays for ten minutes, so this is for a room held open for long.
 */
async function patiently<Answer>(
  dir: string,
  {document, revision}: StoredRoom,
  question: (document: RoomDocument) => Promise<Answer>,
): Promise<Answer> {
  try {
    return await question(document);
  } catch (error) {
    if (!(error instanceof DocumentMissing)) throw error;
    const newest = await readRoomFile(join(dir, ROOM_FILE));
    if (newest.revision === revision) throw error;
    return question(newest.document);
  }
}

function spanOf({documents}: RoomDocument, logger: string): LoggerSpan | undefined {
  const rows = documents.filter(({path}) => path.startsWith(readingsOf(logger)));
  if (rows.length === 0) return undefined;
  return {
    rows: rows.reduce((sum, row) => sum + row.rows, 0),
    fromDays: Math.min(...rows.map(({from}) => Date.parse(from ?? '') / MS_PER_DAY)),
    toDays: Math.max(...rows.map(({to}) => Date.parse(to ?? '') / MS_PER_DAY)),
  };
}
