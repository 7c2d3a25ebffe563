// What lies ahead, as a person meets it on a Friday morning: the built program in a pseudo terminal.
import {beforeEach, expect, it} from 'vitest';
import {newRoom, type RoomAt} from '../commands/program.ts';
import {KEYS, openScreen, type Screen} from './screen.ts';

const FRIDAY = '2026-06-12T08:40';
let room: RoomAt;

beforeEach(() => {
  room = newRoom();
  const began = '2026-06-10T09:00';
  const {status, err} = room.apply(began, [
    {
      record: 'calendar',
      open: Object.fromEntries(['mon', 'tue', 'wed', 'thu', 'fri'].map(day => [day, ['08:00-17:00']])),
    },
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 22}},
    {record: 'unit', code: 'C2', type: 'cage', place: 'rack A/2', setPoints: {constant: 22}},
    {record: 'sample', code: '26-031', collected: {from: '2026-06-09'}, method: 'beating'},
    ...(['larva', 'pupa'] as const).map((stage, i) => ({
      record: 'lot',
      code: `26-031-${'AB'[i]}`,
      sample: '26-031',
      unit: `C${i + 1}`,
      at: began,
      stages: {[stage]: 18},
      candidates: [{profile: 'pieris-rapae'}],
    })),
    {record: 'note', about: 'C1', at: began, text: 'the door sticks'},
  ]);
  expect(err).toBe('');
  expect(status).toBe(0);
});

const open = (env: Record<string, string> = {}): Screen =>
  openScreen(['--room', room.dir, '--now', FRIDAY, '--by', 'B. Cover'], {columns: 80, rows: 24, env});

it('f answers whether all can wait over the closed days; escape leaves while it is being worked out', async () => {
  const screen = open({NO_COLOR: '1'});
  await screen.waitFor('feed 18 larvae');
  screen.press('f');
  await screen.waitFor('can it wait?');
  screen.press(KEYS.escape);
  await screen.waitFor(/▸ C1 .*feed 18 larvae/);
  screen.press('f');
  const shown = await screen.waitFor('No: this cannot wait until Mon 15 June');
  expect(shown).toMatch(/C1 +feed 18 larvae/);
  expect(shown).toMatch(/C2 +26-031-B: \d+ in 100 that an adult is out/);
  expect(shown.split('\n')).toHaveLength(23);
  expect(screen.raw()).not.toContain('\u001b[31m');
  screen.press(KEYS.escape);
  await screen.waitFor('to do');
  screen.press('q');
  expect((await screen.exited).exitCode).toBe(0);
});

it('h shows the note to whoever takes over; t signs it, and the next note says so', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  screen.press('h');
  await screen.waitFor('Pressing');
  expect(screen.text()).toMatch(/C1 +feed 18 larvae/);
  screen.press('g');
  for (let i = 0; i < 20 && !screen.text().includes('the door sticks'); i++) {
    screen.press(KEYS.down);
    await new Promise(resolve => setTimeout(resolve, 50));
  }
  await screen.waitFor('the door sticks (A. Keeper');
  screen.press('t');
  await screen.waitFor('Taken over by B. Cover');
  await screen.waitFor('last taken over by B. Cover');
  expect(room.ask<{record: object; by: string}[]>(FRIDAY, 'daybook').at(-1)).toMatchObject({
    by: 'B. Cover',
    record: {record: 'acknowledge', alert: 'handover:2026-06-12', done: 'taken over by B. Cover'},
  });
  screen.press(KEYS.escape);
  await screen.waitFor('to do');
  screen.press('q');
  expect((await screen.exited).exitCode).toBe(0);
});

it('t signs nothing but the handover note, and w, m and f lead from page to page', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  screen.press('w');
  await screen.waitFor(/Fri 12 Jun +█/);
  screen.press('t');
  await screen.waitFor('H shows the handover note first');
  screen.press('m');
  await screen.waitFor('a month ahead');
  await screen.waitFor(/Fri 26 Jun/);
  screen.press('f');
  await screen.waitFor('cannot wait until');
  screen.press('\u0003');
  await screen.exited;
  expect(screen.isAlternate()).toBe(false);
});
