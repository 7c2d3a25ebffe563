// What the screens do to a terminal and with other processes: the built program in a pseudo terminal.
import {beforeEach, expect, it} from 'vitest';
import {newRoom, type RoomAt, temporaryFolder} from '../commands/program.ts';
import {KEYS, openScreen, type ScreenOptions} from './screen.ts';

const NOW = '2026-06-12T08:40';
let room: RoomAt;

beforeEach(() => {
  room = newRoom();
  const {status, err} = room.apply('2026-06-10T09:00', [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 22}},
    {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2', setPoints: {constant: 22}},
    {record: 'sample', code: '26-031', collected: {from: '2026-06-09'}, method: 'beating'},
    ...['C1', 'C2'].map((unit, i) => ({
      record: 'lot',
      code: `26-031-${'AB'[i]}`,
      sample: '26-031',
      unit,
      at: '2026-06-10T09:00',
      stages: {larva: 18},
      candidates: [{profile: 'pieris-rapae'}],
    })),
  ]);
  expect(err).toBe('');
  expect(status).toBe(0);
});

const open = (options: ScreenOptions = {}) => openScreen(['--room', room.dir, '--now', NOW], options);

it('a window made narrow, tiny and wide again is drawn whole each time', async () => {
  const screen = open();
  await screen.waitFor('26-031-B');
  screen.resize(62, 18);
  await screen.waitFor(/^─{62}$/m);
  expect(
    screen
      .text()
      .split('\n')
      .filter(row => /feed/.test(row)).length,
  ).toBeGreaterThanOrEqual(2);
  expect(screen.text()).not.toMatch(/─{63}/);
  screen.resize(40, 8);
  await screen.waitFor('Needs 60 columns and 16 rows');
  screen.resize(100, 30);
  await screen.waitFor(/^─{100}$/m);
  expect(screen.raw()).not.toContain('\u001b[3J');
  screen.press('q');
  await screen.exited;
});

it('tasks that are ticked together are asked once', async () => {
  const screen = open();
  await screen.waitFor('26-031-B');
  screen.press('a ');
  await screen.waitFor('feed, 2 together');
  screen.press('sn18\r');
  await screen.waitFor('2 tasks done');
  const fed = room
    .ask<{record: {record: string; lot?: string}}[]>(NOW, 'daybook')
    .filter(({record}) => record.record === 'care');
  expect(fed.map(({record}) => record.lot).sort()).toEqual(['26-031-A', '26-031-B']);
  screen.press('q');
  await screen.exited;
});

it('what another process records shows by itself', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  expect(room.at(NOW, 'loss', '26-031-A', '3', '--stage', 'larva', '--cause', 'dead')).toMatchObject({
    status: 0,
  });
  await screen.waitFor('feed 15 larvae');
  screen.press('q');
  await screen.exited;
});

it('a lot, its unit and its field sample open behind a line, and escape leads back', async () => {
  const screen = open({columns: 100, rows: 40});
  await screen.waitFor('feed 18 larvae');
  screen.press(KEYS.enter);
  await screen.waitFor('temperature in C1');
  await screen.waitFor('pieris-rapae 1.00');
  screen.press('c');
  await screen.waitFor('cage at rack A/1');
  await screen.waitFor('larva from');
  screen.press(KEYS.escape);
  await screen.waitFor('temperature in C1');
  screen.press('o');
  await screen.waitFor(/lot 26-031-B/);
  expect(screen.text()).toContain('nobody is named as its collector');
  screen.press(KEYS.escape);
  await screen.waitFor('temperature in C1');
  screen.press(KEYS.escape);
  await screen.waitFor('to do');
  screen.press('q');
  await screen.exited;
});

it('a refusal stays on the line and the screens go on', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  screen.press('e99f\r');
  await screen.waitFor('99 emerged where 18 are alive');
  expect(screen.text()).toContain('adults of 26-031-A');
  expect(room.ask<unknown[]>(NOW, 'list', 'specimens')).toEqual([]);
  screen.press(KEYS.escape);
  await screen.waitFor('feed 18 larvae');
  screen.press('q');
  expect((await screen.exited).exitCode).toBe(0);
});

it.each(['SIGTERM', 'SIGHUP'])('%s gives the terminal back', async signal => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  expect(screen.isAlternate()).toBe(true);
  screen.kill(signal);
  await screen.exited;
  expect(screen.isAlternate()).toBe(false);
});

it('without a room nothing is drawn and one line says what to do', async () => {
  const screen = openScreen(['--room', `${temporaryFolder()}/none`], {columns: 200});
  expect((await screen.exited).exitCode).toBe(1);
  expect(screen.raw()).not.toContain('\u001b[?1049h');
});

it('NO_COLOR leaves no colour', async () => {
  const colour = new RegExp(`${String.fromCharCode(27)}\\[(3[0-7]|9[0-7])m`);
  const coloured = open();
  await coloured.waitFor('feed 18 larvae');
  expect(coloured.raw()).toMatch(colour);
  coloured.press('q');
  await coloured.exited;
  const plain = open({env: {NO_COLOR: '1'}});
  await plain.waitFor('feed 18 larvae');
  expect(plain.raw()).not.toMatch(colour);
  plain.press('q');
  await plain.exited;
});

it('a terminal without Unicode gets ASCII, a screen reader plain lines', async () => {
  const ascii = open({env: {LANG: 'C', LC_ALL: 'C'}});
  await ascii.waitFor(/^-{80}$/m);
  ascii.press('q');
  await ascii.exited;
  const plain = open({env: {TENERAL_PLAIN: '1'}});
  await plain.waitFor('feed 18 larvae');
  expect(plain.text()).not.toMatch(/─/);
  plain.press('q');
  await plain.exited;
});
