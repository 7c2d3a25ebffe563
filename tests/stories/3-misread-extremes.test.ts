// A minimum–maximum thermometer misread, and one not reset. Units and figures are invented; the rule that a minimum is no
// higher than what the thermometer shows at either end is the weather observers' (crh.noaa.gov/lbf). A day drawn from
// its extremes has their midrange as its mean, whatever the hour at which it begins.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, daysLater, forecastOf, kind, pupae, refused, said, sample} from './story-room.ts';

const stories = [
  {
    ...{tuesday: [17, 26, 21.5], misread: [20.9, 25.2, 20.5]},
    ...{unreset: [16.8, 26.4, 21], again: 20.8, before: [17.6, 25], besideC: 20, thatDayC: 21.3, lower: 10},
  },
  {
    ...{tuesday: [12, 19.5, 13.2], misread: [13.6, 18.2, 13.9]},
    ...{unreset: [11.6, 19.9, 15], again: 14, before: [12.2, 19.1], besideC: 17.5, thatDayC: 16.1, lower: 8},
  },
];

interface Extremes {
  readonly state: string;
  readonly minimum: number;
  readonly what: string | null;
}

describe.each(stories)('thermometers read on Tuesday and Wednesday, $misread and $unreset', story => {
  const {tuesday, misread, unreset, again, before, besideC, thatDayC, lower} = story;
  const NOW = '2031-04-09T08:40';
  const room = newRoom();
  const read = (logger: string, day: number, [minimum, maximum, now]: readonly number[], reset?: boolean) => {
    const at = logger === 'M1' ? '08:30' : '08:35';
    return {
      ...{record: 'extremes', logger, minimum, maximum, now, ...(reset === undefined ? {} : {reset})},
      ...{from: `2031-04-0${day - 1}T${at}`, to: `2031-04-0${day}T${at}`},
    };
  };
  const thermometer = (code: string, logger: string, place: string) => [
    {record: 'logger', code: logger, kind: 'extremes'},
    {record: 'unit', code, type: 'cage', place, logger},
  ];
  applied(room, '2031-04-08T09:00', [
    ...thermometer('A1', 'M1', 'rack A/1'),
    ...thermometer('A2', 'M2', 'rack B/2'),
    {record: 'logger', code: 'L3', kind: 'automatic'},
    {record: 'unit', code: 'A3', type: 'cage', place: 'rack B/3', logger: 'L3'},
    sample('S1', '2031-04-01'),
    kind({lower, degreeDays: 400, cv: 0.08}),
    pupae('P2', 'S1', 'A2', '2031-04-08T08:35', 20),
    read('M1', 8, tuesday, true),
    read('M2', 6, [...before, before[0]! + 2], true),
    read('M2', 7, [...before, before[0]! + 3], true),
    read('M2', 8, unreset),
  ]);
  const path = join(temporaryFolder(), 'beside.csv');
  const rows = Array.from({length: 24 * 5 + 1}, (_, hour) => {
    const at = daysLater('2031-04-04T08:35', hour / 24);
    return `${at},${at > '2031-04-08T08:35' ? thatDayC : besideC}`;
  });
  writeFileSync(path, ['time,temperature °C', ...rows, ''].join('\n'));
  said(room, NOW, 'import', 'L3', path);
  const entered = (logger: string, values: readonly number[], at: string, ...more: string[]) => [
    ...(['extremes', logger, String(values[0]), String(values[1])] as const),
    ...(['--shows', String(values[2]), '--from', `2031-04-08T${at}`, '--to', `2031-04-09T${at}`] as const),
    ...more,
  ];
  const readingsOf = (logger: string) =>
    room.ask<{extremes: Extremes[]}>(NOW, 'readings', logger, '--days', '9').extremes;

  const lowest = Math.min(tuesday[2]!, misread[2]!);

  it('asks at once to read again a minimum above the lower of what it showed at both visits, and keeps it', () => {
    const words = said(room, NOW, ...entered('M1', misread, '08:30', '--reset'));
    expect(words).toContain(
      `M1 cannot have a minimum of ${misread[0]} °C: it showed ${lowest} °C when it was read or reset`,
    );
    expect(words).toContain('Read it again. Until then no course is drawn from it');
    expect(said(room, NOW, 'today')).toContain(`M1 cannot have a minimum of ${misread[0]} °C`);
  });

  it('flags it for good, and makes no day of it', () => {
    expect(readingsOf('M1').map(({minimum, state}) => [minimum, state])).toEqual([
      [tuesday[0], 'drawn'],
      [misread[0], 'misread'],
    ]);
    const {days} = room.ask<{days: {day: string; minimumC: number | null; estimated: number}[]}>(
      ...([NOW, 'climate', 'A1', '--days', '0', '--ahead', '0'] as const),
    );
    // What stands there until 08:30 is Tuesday over again, and said to be.
    expect(days[0]!.estimated).toBeGreaterThan(0.35);
    expect(said(room, NOW, 'climate', 'A1')).toMatch(/% estimated/);
  });

  it('takes the reading of a person who has read again', () => {
    const other = newRoom();
    applied(other, NOW, [
      ...thermometer('A1', 'M1', 'rack A/1'),
      read('M1', 8, tuesday, true),
      read('M1', 9, [lowest, misread[1]!, misread[2]!], true),
    ]);
    expect(said(other, NOW, 'today')).not.toContain('M1 cannot');
    expect(said(other, NOW, 'readings', 'M1', '--days', '9')).not.toContain('misread');
  });

  const both = [unreset[0]!, unreset[1]!, again];

  it('will not take the same extremes as on Tuesday without an answer: was it reset?', () => {
    const words = refused(room, NOW, ...entered('M2', both, '08:35'));
    expect(words).toContain('M2 was probably not reset on Tue 8 Apr 08:35');
    expect(words).toContain('Say whether it is reset now: --reset or --not-reset');
  });

  it('keeps the two values as bounds of the true ones, and says so', () => {
    const words = said(room, NOW, ...entered('M2', both, '08:35', '--reset'));
    expect(words).toContain('it was probably not reset on Tue 8 Apr 08:35');
    expect(words).toContain(`it was never below ${both[0]} °C nor above ${both[1]} °C`);
    expect(readingsOf('M2').at(-1)).toMatchObject({minimum: both[0], state: 'bounds'});
    expect(said(room, NOW, 'readings', 'M2', '--days', '9')).toContain('bounds only');
  });

  it('fills the day from the logger beside it, moved by how unlike the two are, and marks it estimated', () => {
    const midrange = ([minimum, maximum]: readonly number[]) => (minimum! + maximum!) / 2;
    const unlike = (2 * midrange(before) + midrange(unreset)) / 3 - besideC;
    const {degreeDays, readings} = forecastOf(room, '2031-04-09T08:35', 'P2');
    expect(Math.abs(degreeDays.accumulated - (thatDayC + unlike - lower))).toBeLessThan(0.15);
    expect(readings.filledHours).toBeCloseTo(24, 1);
    expect(readings.basis).toContain('other logger L3');
    expect(said(room, NOW, 'climate', 'A2')).toContain('65 % estimated');
  });

  it('wants to be told of every reset from then on', () => {
    const thursday = ['--from', '2031-04-09T08:35', '--to', '2031-04-10T08:35'];
    const next = ['extremes', 'M2', String(both[0]! + 0.3), String(both[1]! - 0.4), ...thursday];
    expect(refused(room, '2031-04-10T08:40', ...next)).toContain('Say whether it is reset now');
    expect(said(room, '2031-04-10T08:40', ...next, '--not-reset')).toContain('not reset');
    const first = ['extremes', 'M1', '16', '27', '--from', '2031-04-09T08:30', '--to', '2031-04-10T08:30'];
    expect(said(room, '2031-04-10T08:40', ...first)).toContain('held 16 to 27 °C');
  });
});
