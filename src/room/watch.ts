// Telling a screen that somebody else has changed the room.
import {join} from 'node:path';
import {ROOM_FILE} from './room-document.ts';
import {signatureOf} from './room-file.ts';

const LOOK_EVERY_MS = 1000;

/**
 * Call back, within two seconds, after room.json was replaced, by this process or another; open it again then, and
 * compare revisions. Files are looked at, not waited for: network disks tell nothing by themselves.
 * @returns what ends the watch
 */
export function watchRoom(dir: string, onChange: () => void): () => void {
  const path = join(dir, ROOM_FILE);
  let seen: string | undefined;
  let looking = false;
  const look = async () => {
    if (looking) return;
    looking = true;
    const before = seen;
    seen = await signatureOf(path).catch(() => before);
    looking = false;
    if (before !== undefined && seen !== before && !ended) onChange();
  };
  let ended = false;
  const timer = setInterval(look, LOOK_EVERY_MS);
  timer.unref();
  void look();
  return () => {
    ended = true;
    clearInterval(timer);
  };
}
