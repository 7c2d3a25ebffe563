// The screens as a person meets them: the built program in a pseudo terminal, on a small room of one lot.
import {beforeEach, expect, it} from 'vitest';
import {newRoom, type RoomAt} from '../commands/program.ts';
import {openScreen, type Screen} from './screen.ts';

const NOW = '2026-06-12T08:40';
let room: RoomAt;

beforeEach(() => {
  room = newRoom();
  const {status, err} = room.apply('2026-06-10T09:00', [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 22}},
    {record: 'sample', code: '26-031', collected: {from: '2026-06-09'}, method: 'beating'},
    {
      record: 'lot',
      code: '26-031-A',
      sample: '26-031',
      unit: 'C1',
      at: '2026-06-10T09:00',
      stages: {larva: 18},
      candidates: [{profile: 'pieris-rapae'}],
    },
  ]);
  expect(err).toBe('');
  expect(status).toBe(0);
});

const open = (size: {columns: number; rows: number} = {columns: 80, rows: 24}): Screen =>
  openScreen(['--room', room.dir, '--now', NOW, '--by', 'A. Keeper'], size);

it('the round comes first; space asks the forced answers one by one and does the task; u takes it back', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  screen.press(' ');
  await screen.waitFor('How much food was left?');
  screen.press('s');
  await screen.waitFor('Is there mould?');
  screen.press('n');
  await screen.waitFor('How many are alive, roughly?');
  screen.press('18\r');
  await screen.waitFor(/feed 18 larvae .*done/);
  expect(room.ask<{record: {record: string}}[]>(NOW, 'daybook').at(-1)).toMatchObject({
    by: 'A. Keeper',
    record: {record: 'care', task: 'feed', seen: {foodLeft: 'some', mould: false, alive: 18}},
  });
  screen.press('u');
  await screen.waitFor('Taken back');
  expect(room.ask<{voided: boolean}[]>(NOW, 'daybook').filter(({voided}) => voided)).toHaveLength(1);
  screen.press('q');
  expect((await screen.exited).exitCode).toBe(0);
});

it('tab leads to the threads; e writes adults down with their codes; leaving gives the terminal back', async () => {
  const screen = open({columns: 100, rows: 30});
  await screen.waitFor('feed 18 larvae');
  screen.press('\t');
  await screen.waitFor('1 column = 1 day');
  await screen.waitFor('26-031-A · 18 alive');
  screen.press('e');
  await screen.waitFor('adults of 26-031-A');
  screen.press('2f');
  await screen.waitFor('2 female');
  screen.press('\r');
  await screen.waitFor('Written down');
  expect(room.ask<{code: string}[]>(NOW, 'list', 'specimens').map(({code}) => code)).toEqual([
    '26-031-A-1',
    '26-031-A-2',
  ]);
  screen.press('\u0003');
  await screen.exited;
  expect(screen.isAlternate()).toBe(false);
});

it('m on a lot suggests what it may be from what is known; s takes that, enter writes it down', async () => {
  const screen = open();
  await screen.waitFor('feed 18 larvae');
  screen.press('\r');
  await screen.waitFor('26-031-A ·');
  screen.press('m');
  await screen.waitFor('what 26-031-A may be');
  screen.press('t');
  await screen.waitFor('host=');
  screen.press('host=Brassica sat=leaf taxon=Lepidoptera\r');
  await screen.waitFor('known  Lepidoptera, host Brassica, leaf');
  await screen.waitFor('lives on Brassica');
  screen.press('s');
  await screen.waitFor(/lepidoptera .*the name fits/);
  screen.press('\r');
  await screen.waitFor('26-031-A may be lepidoptera');
  expect(room.ask<{record: {record: string}}[]>(NOW, 'daybook').at(-1)).toMatchObject({
    record: {record: 'revision', lot: '26-031-A', why: 'Lepidoptera, host Brassica, leaf'},
  });
  screen.press('\u0003');
  await screen.exited;
});
