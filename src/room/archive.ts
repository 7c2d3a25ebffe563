// Making room.json small again: what is closed goes where it costs nothing to open the room.
import type {Entry} from '../records/entry.ts';
import {changeRoom} from './change.ts';

/** What left room.json. */
export interface Archived {
  readonly lots: readonly string[];
  readonly entries: number;
}

/**
 * Take out of room.json every closed lot that nothing open hangs on, its sample with the last of them, and entries
 * about nothing open that are over 35 days old. Nothing is lost: all of it is found again by its codes.
 * @param now ms since 1970; default: the clock
 */
export async function archiveRoom(dir: string, options: {by: string; now?: number}): Promise<Archived> {
  let before: readonly Entry[] = [];
  const room = await changeRoom(
    dir,
    async ({entries}) => {
      before = entries;
      return {entries: []};
    },
    {...options, archive: 'closed'},
  );
  const left = new Set(room.entries.map(({id}) => id));
  const gone = before.filter(({id}) => !left.has(id));
  return {entries: gone.length, lots: gone.flatMap(({record}) => lotsIn(record))};
}

function lotsIn(record: Entry['record']): string[] {
  if (record.record === 'lot') return [record.code];
  return record.record === 'split' ? [record.into] : [];
}
