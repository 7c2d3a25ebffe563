import fc from 'fast-check';
import {expect, test} from 'vitest';
import {fold} from '../../src/records/fold.ts';
import {archiveRoom} from '../../src/room/archive.ts';
import {openRoom} from '../../src/room/open.ts';
import {verifyRoom} from '../../src/room/verify.ts';
import {NOW, newRoom, write} from './rooms.ts';

const at = '2026-05-20T10:00:00Z';
const samples = ['S', 'T'].map(code => ({
  record: 'sample',
  code,
  collected: {from: '2026-05-01'},
  method: 'sweep',
}));
const unit = {record: 'unit', code: 'C1', type: 'cage', place: 'rack'};

/** One step of a room's life; numbers choose among the lots or entries there are. */
const step = fc.oneof(
  fc.record({do: fc.constant('lot' as const), which: fc.nat({max: 1})}),
  fc.record({
    do: fc.constantFrom('split' as const, 'eggs' as const, 'note' as const),
    which: fc.nat({max: 9}),
  }),
  fc.record({do: fc.constantFrom('close' as const, 'void' as const), which: fc.nat({max: 40})}),
  fc.record({do: fc.constant('archive' as const), which: fc.constant(0)}),
);

test('whatever is archived, called back, closed or voided: no entry is lost, and every lot is found as it was', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, {minLength: 4, maxLength: 14}), async steps => {
      const dir = await newRoom();
      await write(dir, [unit, ...samples]);
      for (const [number, {do: what, which}] of steps.entries()) {
        const all = await (await openRoom(dir)).allEntries();
        const lots = [...fold(all, NOW).lots.values()];
        const lot = lots[which % Math.max(1, lots.length)];
        const code = `N${number}`;
        const founding = {record: 'lot', code, unit: 'C1', at, stages: {pupa: 4}};
        if (what === 'archive') await archiveRoom(dir, {by: 'anna', now: NOW});
        else if (what === 'lot') await write(dir, [{...founding, sample: 'ST'[which]}]);
        else if (what === 'void') await write(dir, [{record: 'void', entry: all[which % all.length]!.id}]);
        else if (lot === undefined) continue;
        else if (what === 'eggs') await write(dir, [{...founding, from: {lot: lot.code}}]);
        else if (what === 'note')
          await write(dir, [{record: 'note', about: lot.code, text: `note ${number}`, at}]);
        else if (lot.closed !== undefined) continue;
        else if (what === 'close') await write(dir, [{record: 'close', lot: lot.code, at, reason: 'done'}]);
        else await write(dir, [{record: 'split', lot: lot.code, into: code, stages: {pupa: 1}, at}]);
      }

      expect(await verifyRoom(dir)).toMatchObject({problems: []});
      const room = await openRoom(dir);
      const all = await room.allEntries();
      expect(all.map(({id}) => id)).toEqual(Array.from({length: room.next.entry - 1}, (_, i) => `e${i + 1}`));
      const whole = fold(all, NOW);
      const open = fold(room.entries, NOW);
      for (const lot of whole.lots.values()) {
        expect(fold(await room.entriesWith({codes: [lot.code]}), NOW).lots.get(lot.code)).toEqual(lot);
        if (lot.closed === undefined) expect(open.lots.get(lot.code)).toEqual(lot);
      }
    }),
    {numRuns: 25},
  );
});
