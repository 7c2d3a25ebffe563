// Adults for a class: at what to hold pupae, and what the units of the room would give. Everything is invented; the expected
// instants are K × (1 ± 1.645 CV) ÷ (T − T0). A share of 95 % by the class is asked for as it is said: the pupae are held
// so that 95 % are out then, not half of them two days before; the two come out alike.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, forecastOf, hoursAfter, kind, pupae, said, sample, Z95} from './story-room.ts';

const NOW = '2031-05-05T10:00';
const CLASS = '2031-05-22T10:00';
const DAYS = 17;
const stories = [
  {
    ...{lower: 8, degreeDays: 120, cv: 0.08, low: 12, high: 28, early: 18, late: 15, inTime: 17, cool: 14},
    ...{earlyHalf: 'Sat 17 May 10:00', lateHalf: 'Thu 22 May 13:2'},
  },
  {
    // 151 ÷ 13 = 11.62 d: Sat 17 May 00:46; 151 ÷ 9 = 16.78 d: Thu 22 May 04:40, and 95 % only on the 23rd.
    ...{lower: 10, degreeDays: 151, cv: 0.05, low: 14, high: 30, early: 23, late: 19, inTime: 20, cool: 17},
    ...{earlyHalf: 'Sat 17 May 0', lateHalf: 'Thu 22 May 0'},
  },
];

interface Plan {
  readonly holdC: number;
  readonly p05: string;
  readonly p50: string;
  readonly p95: string;
  readonly units: readonly {readonly unit: string; readonly p50: string; readonly judgement: string}[];
  readonly mix: {
    readonly first: {readonly unit: string; readonly days: number};
    readonly afterwards: {readonly unit: string};
    readonly at: string;
    readonly p50: string;
  } | null;
  readonly reserve: {readonly holdC: number; readonly p50: string} | null;
  readonly agesAlike: boolean;
}

describe.each(stories)('$degreeDays degree-days above $lower °C, 95 % out by the class', story => {
  const {lower, degreeDays, cv, low, high, early, late, inTime, cool} = story;
  const cage = (atC: number) => ({
    ...{record: 'unit', code: `C${atC}`, type: 'cage', place: `rack A/${atC}`, setPoints: {constant: atC}},
  });
  const roomOf = (...atC: number[]) => {
    const room = newRoom();
    applied(room, NOW, [
      sample('S1', '2031-04-30'),
      kind({lower, degreeDays, cv}, {limits: {temperature: {low, high}}}),
      ...atC.map(cage),
      pupae('P1', 'S1', `C${atC[0]}`, NOW, 20),
    ]);
    return room;
  };
  const room = roomOf(late, early, 25);
  const ask = (by = CLASS, share = '0.95', where = room) =>
    where.ask<Plan>(NOW, 'plan', 'P1', '--adults-by', by, '--share', share);
  const words = (by = CLASS, share = '0.95', where = room) =>
    said(where, NOW, 'plan', 'P1', '--adults-by', by, '--share', share);
  const isAt = (told: string, expected: string) =>
    expect(Math.abs(hoursAfter(told, expected))).toBeLessThan(2);
  const held = lower + (degreeDays * (1 + Z95 * cv)) / DAYS;
  const outAt = (share: number, atC: number) =>
    daysLater(NOW, (degreeDays * (1 + share * cv)) / (atC - lower));

  it('says at what to hold them, within the limits of the kind, and when how many would be out', () => {
    const plan = ask();
    expect(Math.abs(plan.holdC - held)).toBeLessThan(0.03);
    isAt(plan.p05, outAt(-Z95, held));
    isAt(plan.p50, outAt(0, held));
    isAt(plan.p95, CLASS);
    expect(words()).toContain(`hold ${Math.round(held * 10) / 10} °C from now on`);
    expect(words()).toContain(`limits ${low} to ${high} °C`);
    expect(words()).toContain('95 % of the adults out by Thu 22 May 10:00');
  });

  it('says of each unit when half would be out there, and whether that is too early or too late', () => {
    const {units} = ask();
    expect(units.map(({unit, judgement}) => [unit, judgement])).toEqual([
      [`C${early}`, 'early'],
      ['C25', 'early'],
      [`C${late}`, 'late'],
    ]);
    for (const {unit, p50} of units) isAt(p50, outAt(0, Number(unit.slice(1))));
    expect(words()).toMatch(
      new RegExp(
        `C${early} ${early} °C at rack A/${early}: half ${story.earlyHalf}.*?days too early: many would be old or dead`,
      ),
    );
    expect(words()).toMatch(
      new RegExp(`C${late} ${late} °C at rack A/${late}: half ${story.lateHalf}.*?too late`),
    );
  });

  it('finds the day on which to change from a unit that is too warm to one that is too cool', () => {
    const two = roomOf(cool, early);
    const [warmDay, coolDay] = [early - lower, cool - lower];
    // Half out after fifteen days: as many degree-days in the one as are left for the other.
    const half = ask('2031-05-20T10:00', '0.5', two).mix!;
    expect([half.first.unit, half.afterwards.unit]).toEqual([`C${early}`, `C${cool}`]);
    const change = (degreeDays - 15 * coolDay) / (warmDay - coolDay);
    expect(Math.abs(half.first.days - change)).toBeLessThan(0.05);
    expect(words('2031-05-20T10:00', '0.5', two)).toContain(
      `${change.toFixed(1)} days in C${early} at ${early} °C, then C${cool} at ${cool} °C`,
    );
    isAt(half.p50, '2031-05-20T10:00');
    // The last of them go through the cool unit: for 95 % the change is later than for half.
    const most = ask(CLASS, '0.95', two).mix!;
    const days = (degreeDays * (1 + Z95 * cv) - DAYS * coolDay) / (warmDay - coolDay);
    expect(Math.abs(most.first.days - days)).toBeLessThan(0.1);
    isAt(most.at, CLASS);
  });

  it('needs no two units where one is in time', () => {
    expect(ask(CLASS, '0.95', roomOf(late, early, inTime))).toMatchObject({mix: null});
    expect(ask(CLASS, '0.95', roomOf(inTime)).units).toMatchObject([
      {unit: `C${inTime}`, judgement: 'in-time'},
    ]);
  });

  it('warns that the spread of uneven age is not in it, and keeps a third in reserve, two degrees warmer', () => {
    const {reserve, agesAlike} = ask();
    expect(agesAlike).toBe(true);
    expect(reserve!.holdC).toBeCloseTo(held + 2, 1);
    isAt(reserve!.p50, outAt(0, held + 2));
    expect(words()).toContain('the spread of uneven age is not in these dates');
    expect(words()).toContain(`keep a third of them at ${(held + 2).toFixed(1).replace(/\.0$/, '')} °C`);
    // Where each is of an age of its own, it is in the dates.
    applied(room, NOW, [{...pupae('P2', 'S1', `C${late}`, NOW, 20), ages: 'mixed', progress: [0, 1]}]);
    const mixed = ['plan', 'P2', '--adults-by', CLASS, '--share', '0.95'];
    expect(said(room, NOW, ...mixed)).not.toContain('uneven age');
  });

  it('agrees with the forecast at that temperature', () => {
    const {p05, p50, p95} = forecastOf(room, NOW, 'P1', '--hold', String(held)).adults.animal;
    isAt(p05, outAt(-Z95, held));
    isAt(p50, outAt(0, held));
    isAt(p95, CLASS);
  });

  it('keeps within what was said of the lot itself', () => {
    const own = roomOf(late, early, 25);
    said(own, NOW, 'revise', 'P1', '--warmest', String(late + 1));
    const plan = words(CLASS, '0.95', own);
    expect(plan).toContain(`limits ${low} to ${late + 1} °C, as kept with the lot`);
    expect(plan).toContain(`C${early} not fit: ${early}.0 °C lies outside ${low} to ${late + 1} °C`);
  });
});
