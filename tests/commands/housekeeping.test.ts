// The room itself: making one, taking back, skipping with a reason, going back to a sound copy, putting closed lots aside.
import {mkdirSync, readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {stateOf} from './folder-state.ts';
import {asked, newRoom, type RoomAt, temporaryFolder, teneral} from './program.ts';
import {SEASON_NOW, season} from './season.ts';

interface Applied {
  readonly applied: number;
  readonly entries: readonly string[];
  readonly voided: readonly string[];
}
interface Line {
  readonly id: string;
  readonly voided: boolean;
  readonly record: {readonly record: string};
}
interface Task {
  readonly id: string;
  readonly task: string;
  readonly state: string;
  readonly target: string;
}

const NOW = '2026-06-01T09:00+02:00';
const NEXT_DAY = '2026-06-02T10:00+02:00';

/** A room with ten pupae in one lot, written by A. Keeper in one request. */
function roomOfTen(): RoomAt {
  const room = newRoom('Europe/Vienna');
  const {status, err} = room.apply(NOW, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 20}},
    {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-05-30'}},
    {
      ...{record: 'lot', code: 'A', sample: 'S', unit: 'C1', stages: {pupa: 10}, at: NOW},
      candidates: [{profile: 'lepidoptera'}],
    },
  ]);
  if (status !== 0) throw new Error(err);
  return room;
}

function seasonRoom(): RoomAt {
  const room = newRoom('Europe/Vienna');
  const {status, err} = room.apply(SEASON_NOW, season);
  if (status !== 0) throw new Error(err);
  return room;
}

const aliveIn = (room: RoomAt, now = NOW): number | undefined =>
  room.ask<{alive: Record<string, number>}[]>(now, 'balance', 'A')[0]?.alive.pupa;

describe('init', () => {
  it('makes an empty room in a folder that is absent, however deep, or empty', () => {
    const folder = temporaryFolder();
    const empty = join(folder, 'empty');
    mkdirSync(empty);
    for (const dir of [join(folder, 'deep', 'down'), empty]) {
      const made = asked(['init', dir, '--name', 'north room', '--zone', 'Asia/Tokyo', '--now', NOW]);
      expect(made).toMatchObject({name: 'north room', zone: 'Asia/Tokyo'});
      expect(asked(['verify', '--room', dir])).toEqual({sound: true, documents: 1, problems: []});
      expect(asked(['list', 'lots', '--room', dir])).toEqual([]);
      expect(asked(['forecast', '--room', dir])).toEqual([]);
      expect(asked(['today', '--room', dir, '--now', NOW])).toMatchObject({day: '2026-06-01', tasks: []});
    }
  });

  it('leaves alone a folder that holds anything', () => {
    const folder = temporaryFolder();
    writeFileSync(join(folder, 'letter.txt'), 'dear');
    const {status, err} = teneral(['init', folder, '--name', 'x', '--zone', 'UTC']);
    expect(status).toBe(1);
    expect(err).toContain('something is there already');
    expect(Object.keys(stateOf(folder))).toEqual(['letter.txt']);
  });
});

describe('undo', () => {
  it('takes back the newest request of its own person, a whole batch at once, and then the one before', () => {
    const room = roomOfTen();
    room.apply(NOW, [
      {record: 'loss', lot: 'A', count: 2},
      {record: 'loss', lot: 'A', count: 1},
    ]);
    room.at(NOW, 'loss', 'A', '1', '--cause', 'dead', '--by', 'Otto');
    expect(aliveIn(room)).toBe(6);
    const undone = room.ask<Applied>(NOW, 'undo');
    expect(undone.voided).toHaveLength(2);
    expect(aliveIn(room)).toBe(9);
    room.at(NOW, 'undo', '--by', 'Otto');
    expect(aliveIn(room)).toBe(10);
    expect(room.ask<Applied>(NOW, 'undo').voided).toHaveLength(3);
    expect(room.ask(NOW, 'list', 'lots')).toEqual([]);
    const nothing = room.at(NOW, 'undo');
    expect(nothing.status).toBe(1);
    expect(nothing.err).toMatch(/A\. Keeper has written nothing that could be taken back/);
    const lines = room.ask<Line[]>(NOW, 'daybook');
    expect(lines.every(({voided, record}) => voided || record.record === 'void')).toBe(true);
  });

  it('frees the keys of what it takes back, so that the corrected batch can be applied again', () => {
    const room = roomOfTen();
    const loss = (count: number) => room.apply(NOW, [{record: 'loss', key: 'once', lot: 'A', count}]);
    loss(2);
    room.at(NOW, 'undo');
    loss(3);
    loss(3);
    expect(aliveIn(room)).toBe(7);
  });

  it('takes back a void like any other request, and passes over what an undo wrote', () => {
    const room = roomOfTen();
    const [loss = ''] = room.ask<Applied>(NOW, 'loss', 'A', '2', '--cause', 'dead').entries;
    room.at(NOW, 'loss', 'A', '1', '--cause', 'dead');
    room.at(NOW, 'void', loss, '--reason', 'another cage');
    expect(aliveIn(room)).toBe(9);
    room.at(NOW, 'undo');
    expect(aliveIn(room)).toBe(7);
    room.at(NOW, 'undo');
    expect(aliveIn(room)).toBe(8);
  });

  it('is refused where a later balance would break', () => {
    const room = roomOfTen();
    room.at(NOW, 'found', 'A', 'pupa', '3');
    room.at(NOW, 'emerge', 'A', '--unsexed', '12', '--by', 'Otto');
    const before = stateOf(room.dir);
    const {status, err} = room.at(NOW, 'undo');
    expect(status).toBe(1);
    expect(err).toMatch(/break what is recorded already: emergence .*12 emerged where 10 are alive/);
    expect(stateOf(room.dir)).toEqual(before);
  });
});

describe('void', () => {
  it('takes one entry out of the sum, once, and leaves it readable', () => {
    const room = roomOfTen();
    const [loss = ''] = room.ask<Applied>(NOW, 'loss', 'A', '4', '--cause', 'dead').entries;
    const [voiding = ''] = room.ask<Applied>(NOW, 'void', loss, '--reason', 'another cage').entries;
    expect(aliveIn(room)).toBe(10);
    expect(room.ask<Line[]>(NOW, 'daybook', 'A')).toContainEqual(
      expect.objectContaining({id: loss, voided: true}),
    );
    expect(room.at(NOW, 'void', loss).err).toMatch(/void already/);
    room.at(NOW, 'void', voiding);
    expect(aliveIn(room)).toBe(6);
  });

  it('is refused for what others rest on', () => {
    const room = seasonRoom();
    const before = stateOf(room.dir);
    for (const code of ['26-031', '26-031-A']) {
      const [first] = room.ask<Line[]>(SEASON_NOW, 'daybook', code);
      const {status, err} = room.at(SEASON_NOW, 'void', first!.id);
      expect(status).toBe(1);
      expect(err).toMatch(/it would break what is recorded already/);
    }
    expect(stateOf(room.dir)).toEqual(before);
  });
});

describe('skip', () => {
  it('wants a reason, and leaves the task as due as it was', () => {
    const room = roomOfTen();
    const taskAt = (now: string) =>
      room.ask<{tasks: Task[]}>(now, 'today').tasks.find(({task}) => task === 'clean' || task === 'moisten')!;
    const before = taskAt('2026-06-20T09:00');
    const bare = room.at('2026-06-20T09:00', 'skip', before.id);
    expect(bare.status).toBe(1);
    expect(bare.err).toContain('--why');
    room.at('2026-06-20T09:00', 'skip', before.id, '--why', 'freshly moulted');
    const {id, state, target} = taskAt('2026-06-20T09:30');
    expect({id, state, target}).toEqual({id: before.id, state: before.state, target: before.target});
    expect(room.at('2026-06-20T09:30', 'today').out).toContain('skipped: freshly moulted');
    expect(taskAt('2026-06-21T09:00').target).toBe(before.target);
  });
});

describe('restore', () => {
  it('goes back to the newest sound copy, and keeps what was damaged aside', () => {
    const room = seasonRoom();
    const path = join(room.dir, 'room.json');
    const sound = readFileSync(path);
    const balance = room.ask(SEASON_NOW, 'balance');
    const early = room.at(SEASON_NOW, 'restore');
    expect(early.status).toBe(1);
    expect(early.err).toContain('nothing in this room is damaged');
    writeFileSync(path, sound.subarray(0, 1000));
    const restored = room.ask<{from: string; at: string; aside: string}>(SEASON_NOW, 'restore');
    expect(restored).toMatchObject({lost: []});
    expect(restored.at).toMatch(/^\d{4}-\d{2}-\d{2}T[\d:.]+[+-]\d{2}:\d{2}$/);
    expect(readFileSync(join(restored.aside, 'room.json'))).toEqual(sound.subarray(0, 1000));
    expect(room.ask(SEASON_NOW, 'verify')).toMatchObject({sound: true});
    expect(room.ask(SEASON_NOW, 'balance')).toEqual(balance);
  });

  it('goes back to the copy that is named', () => {
    const room = roomOfTen();
    room.at(NOW, 'loss', 'A', '4', '--cause', 'dead');
    const unknown = room.at(NOW, 'restore', '--from', 'none');
    expect(unknown.status).toBe(1);
    const copies = Object.keys(stateOf(room.dir)).filter(name => /^backups\/.*\.json$/.test(name));
    const last = copies.at(-2)!.slice('backups/'.length, -'.json'.length);
    expect(room.at(NOW, 'restore', '--from', last).status).toBe(0);
    expect(aliveIn(room)).toBe(10);
  });
});

describe('archive', () => {
  it('puts closed lots aside, where their codes still find them and names can be added', () => {
    const room = roomOfTen();
    room.apply(NOW, [
      {record: 'emergence', lot: 'A', adults: [{sex: 'female', count: 10}]},
      {record: 'close', lot: 'A'},
      {record: 'note', about: 'C1', text: 'lamp replaced'},
    ]);
    const traced = room.ask(NEXT_DAY, 'trace', 'A-7');
    expect(room.ask(NEXT_DAY, 'archive')).toMatchObject({lots: ['A']});
    expect(readFileSync(join(room.dir, 'room.json'), 'utf8')).not.toContain('A-7');
    expect(room.ask(NEXT_DAY, 'list', 'lots')).toEqual([]);
    expect(room.ask(NEXT_DAY, 'list', 'lots', '--all')).toMatchObject([{code: 'A', alive: 0}]);
    expect(room.ask(NEXT_DAY, 'trace', 'A-7')).toEqual(traced);
    expect(room.ask(NEXT_DAY, 'forecast', 'A')).toMatchObject([{status: 'finished'}]);
    room.at(NEXT_DAY, 'identify', 'A-7', 'Pieris rapae');
    expect(room.ask(NEXT_DAY, 'trace', 'A-7')).toMatchObject({taxon: 'Pieris rapae'});
    expect(room.at(NEXT_DAY, 'loss', 'A', '1', '--cause', 'dead').err).toContain('was closed');
    expect(room.ask(NEXT_DAY, 'verify')).toMatchObject({sound: true, problems: []});
    expect(room.at(NEXT_DAY, 'archive').status).toBe(0);
  });
});
