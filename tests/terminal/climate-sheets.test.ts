// What a person does about readings on the screens: look at figures, judge doubts, import a file.
import {beforeAll, describe, expect, it} from 'vitest';
import type {DoubtRow} from '../../src/work/logger-readings.ts';
import {write} from '../room/rooms.ts';
import {driven, roomWith, SMALL_ROOM} from './app-of.ts';

const spike: DoubtRow = {
  rule: 'spike',
  from: '2026-06-06T11:30:00+02:00',
  to: '2026-06-06T11:30:00+02:00',
  readings: 1,
  what: '41.9 °C between 22.3 °C and 22.5 °C',
  state: 'set-aside',
};

let dir: string;
beforeAll(async () => {
  dir = await roomWith(SMALL_ROOM);
});

describe('doubtful readings', () => {
  it('are looked through from the unit, and masked or trusted with a reason', async () => {
    const {press, shown, send} = await driven(dir);
    expect(press('cd')).toEqual([{do: 'doubts', logger: 'L1'}]);
    expect(shown()).toContain('The readings are being looked through');
    send({is: 'doubts', logger: 'L1', doubts: {value: [spike]}});
    expect(shown()).toContain('spike: 41.9 °C between 22.3 °C and 22.5 °C');
    expect(shown()).toContain('set aside: not in the course');
    press('t');
    expect(press('a lamp<enter>')).toMatchObject([
      {do: 'record', records: [{record: 'mask', logger: 'L1', from: spike.from, lift: true, why: 'a lamp'}]},
    ]);
  });

  it('that are none say so, and no key judges them', async () => {
    const {press, shown, send} = await driven(dir);
    press('cd');
    send({is: 'doubts', logger: 'L1', doubts: {value: []}});
    expect(shown()).toContain('Nothing that it said is doubted.');
    press('m');
    expect(shown()).toContain('Nothing is doubted');
  });
});

describe('a unit', () => {
  it('shows its climate in figures and a whole year', async () => {
    const {press, app} = await driven(dir);
    press('ct');
    expect(app().sheets.at(-1)).toMatchObject({kind: 'unit', figures: true});
    expect(press('5')).toMatchObject([{do: 'course', unit: 'C1'}]);
    expect(app().sheets.at(-1)).toMatchObject({span: 'year', figures: true});
  });

  it('takes a file of its logger, and says why it cannot where it has none', async () => {
    const {press, shown} = await driven(dir);
    press('ci');
    expect(press('export.csv<enter>')).toEqual([{do: 'import', logger: 'L1', path: 'export.csv'}]);
    press('<escape>');
    expect(shown()).toContain('rack A');
  });

  it('read by a minimum–maximum thermometer takes both values, and asks for the reset once it was forgotten', async () => {
    const day = (number: number) => `2026-06-${number}T08:30:00+02:00`;
    const held = {record: 'extremes', logger: 'L1', minimum: 16.8, maximum: 26.4, now: 21};
    const read = await roomWith([{...SMALL_ROOM[0], kind: 'extremes'}, ...SMALL_ROOM.slice(1)]);
    await write(read, [{...held, from: day(10), to: day(11)}], {now: Date.parse('2026-06-11T08:00:00Z')});
    const first = await driven(read);
    first.press('cl');
    expect(first.shown()).toContain('minimum and maximum of L1');
    expect(first.press('17<down>26<down>20.5<enter>')).toMatchObject([
      {do: 'record', records: [{record: 'extremes', logger: 'L1', minimum: 17, maximum: 26, now: 20.5}]},
    ]);
    const {press, shown} = await driven(read);
    press('cl16.8<down>26.4<down>20.8<enter>');
    expect(shown()).toContain('L1 was probably not reset on Thu 11 June 08:30: say whether it is reset now');
    expect(press('<right><enter>')).toMatchObject([{do: 'record', records: [{minimum: 16.8, reset: true}]}]);
  });

  it('is given an offset from its logger, which holds since those came who live there', async () => {
    const {press} = await driven(dir);
    press('co');
    expect(press('-1,5<enter>')).toMatchObject([
      {
        do: 'record',
        records: [{record: 'unit', code: 'C1', offsetC: -1.5, at: expect.stringContaining('2026-06-09')}],
      },
    ]);
  });
});
