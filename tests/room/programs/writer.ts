// A program that writes notes into a room, one change each: writer DIR BY COUNT.
import {changeRoom} from '../../../src/room/change.ts';
import {nextIds} from '../../../src/room/numbering.ts';

const [dir, by, count] = process.argv.slice(2) as [string, string, string];
for (let i = 0; i < Number(count); i++) {
  await changeRoom(
    dir,
    async room => {
      const {request, entries} = nextIds(room, 1);
      const recordedAt = new Date().toISOString();
      return {
        entries: [{id: entries[0]!, request, recordedAt, by, record: {record: 'note', text: `${by} ${i}`}}],
      };
    },
    {by},
  );
}
