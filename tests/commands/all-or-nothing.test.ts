// A batch is applied as a whole or not at all: a bad record of every kind, wherever it stands, changes no byte of the room.
import {beforeAll, describe, expect, it} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {record} from '../../src/work/record.ts';
import {stateOf} from './folder-state.ts';
import {newRoom, type RoomAt, teneral} from './program.ts';
import {SEASON_NOW, season, type Written} from './season.ts';

const A = {lot: '26-031-A'};
const at = '2026-06-20T09:00';
const future = '2026-06-20T14:00:01+02:00';

/** Not of the form of a record; each names its field. */
const malformed: readonly Written[] = [
  {record: 'logger', code: 'L 9', kind: 'hand'},
  {record: 'unit', code: 'C9', type: 'box', place: 'rack'},
  {record: 'sample', code: 'S9', method: 'yellow-pan'},
  {record: 'lot', code: 'N', sample: '26-031', unit: 'C3', at},
  {record: 'reading', logger: 'L1', at, temperature: '21'},
  {record: 'extremes', logger: 'M1', from: at, to: at, minimum: 20, maximum: 10},
  {record: 'water', unit: 'T1', at, ph: 15},
  {record: 'mask', logger: 'L1', from: at, why: 'no end'},
  {record: 'count', ...A, at, stages: {'larva-5': 1.5}},
  {record: 'check', ...A, at, found: -1},
  {record: 'hatch', lot: '26-031-E', at, count: 0},
  {record: 'found', ...A, at, count: 1},
  {record: 'loss', ...A, at, count: 1, cause: 'bored'},
  {record: 'voucher', ...A, at, count: 0},
  {record: 'move', ...A, at},
  {record: 'split', ...A, at, into: '26-031-C', stages: {}},
  {record: 'merge', ...A, at},
  {record: 'emergence', ...A, at, adults: []},
  {record: 'imago', at},
  {record: 'parasitoid', ...A, at},
  {record: 'identification', specimen: '26-031-A-1'},
  {record: 'rule', code: 'r', task: 'feed', every: {weeks: 1}},
  {record: 'calendar', open: {mon: ['8-17']}},
  {record: 'person', name: ''},
  {record: 'care', task: 'feed', at},
  {record: 'skip', unit: 'C3', task: 'feed', at},
  {record: 'acknowledge', alert: 'a', at},
  {record: 'note', about: 'C3', weightMg: 0},
  {record: 'close', at},
  {record: 'void'},
  {record: 'profile', profile: 'p', name: 'p', rank: 'species', stages: [], sources: []},
  {record: 'omen', what: 'unknown kind'},
  {record: 'note', about: 'C3', at: 'yesterday'},
];

/** Of the right form, but they cannot be: what they name is not there, the sum breaks, the date is wrong. */
const impossible: readonly Written[] = [
  {record: 'logger', code: 'L9', kind: 'hand', at: future},
  {record: 'unit', code: 'C9', type: 'cage', place: 'rack', logger: 'L9'},
  {record: 'sample', code: 'S9', collected: {from: '2026-06-21'}, method: 'sweep'},
  {record: 'lot', code: 'N', sample: '26-031', unit: 'C9', at, stages: {pupa: 1}},
  {record: 'reading', logger: 'L9', at, temperature: 21},
  {record: 'extremes', logger: 'M1', from: at, to: '2026-06-19T09:00', minimum: 1, maximum: 2},
  {record: 'water', unit: 'T9', at, ph: 7},
  {record: 'mask', logger: 'L1', from: at, to: '2026-06-19T09:00', why: 'backwards'},
  {record: 'count', ...A, at, stages: {'larva-5': 99}},
  {record: 'check', ...A, at: future},
  {record: 'hatch', lot: '26-031-M', at: '2026-06-20T10:00', count: 3},
  {record: 'found', lot: 'nobody', at, stage: 'pupa', count: 1},
  {record: 'loss', ...A, at, count: 99},
  {record: 'voucher', ...A, at, count: 2, codes: ['only-one']},
  {record: 'move', ...A, at, unit: 'C9'},
  {record: 'split', ...A, at, into: '26-031-C', stages: {pupa: 99}},
  {record: 'merge', ...A, at, into: '26-031-A'},
  {record: 'emergence', ...A, at, adults: [{count: 99}]},
  {record: 'imago', specimen: '26-031-A-1', at},
  {record: 'parasitoid', ...A, at, count: 1, hosts: 99},
  {record: 'identification', specimen: '26-031-A-77', taxon: 'Pieris rapae'},
  {record: 'rule', code: 'r', task: 'feed', every: {days: 5}, latestDays: 3},
  {record: 'calendar', closed: [{from: '2026-12-31', to: '2026-12-24'}]},
  {record: 'person', name: 'Ida', at: future},
  {record: 'care', unit: 'C3', lot: 'nobody', task: 'feed', at},
  {record: 'skip', unit: 'C9', task: 'feed', at, why: 'gone'},
  {record: 'acknowledge', alert: 'a', at: future, done: 'b'},
  {record: 'note', about: 'nothing', text: 'x'},
  {record: 'close', lot: '26-031-G', at},
  {record: 'void', entry: 'e99999'},
  {record: 'note', about: 'C3', at: '2026-02-30T09:00'},
];

describe('a batch with one bad record', () => {
  let room: RoomAt;
  let before: Readonly<Record<string, string>>;

  beforeAll(() => {
    room = newRoom('Europe/Vienna');
    const written = room.apply(SEASON_NOW, [
      {record: 'logger', code: 'L5', kind: 'automatic'},
      {record: 'note', about: 'L5', text: 'here before'},
    ]);
    if (written.status !== 0) throw new Error(written.err);
    before = stateOf(room.dir);
  });

  const session = () => ({dir: room.dir, now: SEASON_NOW, by: 'A. Keeper', warn: () => {}});
  const places = Array.from({length: season.length + 1}, (_, place) => place);

  it.each([...malformed, ...impossible])('is refused wherever it stands: %j', async bad => {
    // What only fails among all the others takes longer to find: it is put at every third place.
    const step = malformed.includes(bad) ? 1 : 3;
    const offset = Math.max(0, impossible.indexOf(bad)) % step;
    for (const place of places.filter(each => each % step === offset)) {
      const refusal: unknown = await record(session(), season.toSpliced(place, 0, bad)).catch(error => error);
      expect(refusal, `at ${place}`).toBeInstanceOf(Refusal);
      expect(refusal).toMatchObject({where: expect.stringMatching(new RegExp(`^record ${place + 1}\\b`))});
    }
    expect(stateOf(room.dir)).toEqual(before);
  });

  it('ends with 1 and one line that names it, each kind at another place', () => {
    for (const [i, bad] of impossible.entries()) {
      if (i % 3 > 0) continue;
      const place = (i * 11) % places.length;
      const batch = season.toSpliced(place, 0, i % 2 === 0 ? bad : malformed[i]!);
      const {status, out, err} = teneral(
        ['--room', room.dir, '--now', SEASON_NOW, 'apply', '-'],
        batch.map(each => JSON.stringify(each)).join('\n'),
      );
      expect({status, out}).toEqual({status: 1, out: ''});
      expect(err).toMatch(new RegExp(`^teneral: standard input, line ${place + 1}\\b[^\\n]+\\n$`));
    }
    expect(stateOf(room.dir)).toEqual(before);
  });

  it('can be applied once the bad record is left out', () => {
    expect(room.apply(SEASON_NOW, season)).toMatchObject({status: 0, err: ''});
  });
});
