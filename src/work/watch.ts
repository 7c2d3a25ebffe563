// Telling a screen that the room was changed, by this process or another.
import {watchRoom} from '../room/watch.ts';
import type {Desk} from './desk.ts';

/** Calls back within two seconds of a change. @returns what ends the watch */
export function watchDesk({room}: Desk, onChange: () => void): () => void {
  return watchRoom(room.dir, onChange);
}
