// A program that imports readings of two months and writes a note, as one change: importer DIR.
import {changeRoom} from '../../../src/room/change.ts';
import {nextIds} from '../../../src/room/numbering.ts';
import {readings} from '../readings-of.ts';

const dir = process.argv[2]!;
await changeRoom(
  dir,
  async room => {
    const {request, entries} = nextIds(room, 1);
    const recordedAt = new Date().toISOString();
    return {
      entries: [{id: entries[0]!, request, recordedAt, by: 'bo', record: {record: 'note', text: 'imported'}}],
      readings: [{logger: 'L1', file: 'more.csv', hash: 'b2', series: readings('2026-05-31T22:00Z', 6)}],
    };
  },
  {by: 'bo'},
);
