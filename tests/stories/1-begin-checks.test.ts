// When to begin looking at band larvae, and what a warmer box does to it. Everything is invented; the expected instants
// are K × (1 ± 1.645 CV) ÷ (T − T0). A lead of three days and daily looks are common practice, no source.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, forecastOf, hoursAfter, kind, pupae, said, sample, Z95} from './story-room.ts';

const hours = ['09:00-17:00'];
const START = '2031-03-03T12:00';
const WARMED = '2031-03-13T12:00';

const stories = [
  {
    ...{lower: 10, degreeDays: 250, cv: 0.08, atC: 22, warmC: 25},
    ...{first: '2031-03-18T09:00', sooner: '2031-03-17T09:00', closed: 'closed Sat 22 Mar to Sun 23 Mar'},
  },
  {
    ...{lower: 8, degreeDays: 300, cv: 0.06, atC: 20, warmC: 24},
    ...{first: '2031-03-24T09:00', sooner: '2031-03-19T09:00', closed: 'closed Sat 29 Mar to Sun 30 Mar'},
  },
];

describe.each(stories)('$degreeDays degree-days above $lower °C in a box at $atC °C', story => {
  const {lower, degreeDays, cv, atC, warmC} = story;
  const room = newRoom();
  const box = {record: 'unit', code: 'C2', type: 'emergence-box', place: 'rack C/2'};
  applied(room, START, [
    {
      record: 'calendar',
      at: '2031-01-01T00:00',
      open: {mon: hours, tue: hours, wed: hours, thu: hours, fri: hours},
    },
    sample('S31-0052', '2031-02-01'),
    kind({lower, degreeDays, cv}),
    {...box, setPoints: {constant: atC}},
    pupae('R31-014', 'S31-0052', 'C2', START, 38),
  ]);
  const outAt = (share: number) => daysLater(START, (degreeDays * (1 + share * cv)) / (atC - lower));

  it('expects 5 %, half and 95 % when the degree-days say so', () => {
    const {p05, p50, p95} = forecastOf(room, '2031-03-03T13:00', 'R31-014').adults.animal;
    expect(Math.abs(hoursAfter(p05, outAt(-Z95)))).toBeLessThan(2);
    expect(Math.abs(hoursAfter(p50, outAt(0)))).toBeLessThan(0.5);
    expect(Math.abs(hoursAfter(p95, outAt(Z95)))).toBeLessThan(2);
  });

  it('begins to look at the latest open round three days before 5 % are out', () => {
    const {startChecking} = forecastOf(room, '2031-03-03T13:00', 'R31-014');
    expect(hoursAfter(startChecking, story.first)).toBe(0);
  });

  it('says now which closed days will need a visit', () => {
    expect(said(room, '2031-03-10T10:00', 'today')).toContain('(look C2)');
    if (story === stories[0])
      expect(said(room, '2031-03-03T13:00', 'today')).toContain(`${story.closed}, and 2 visits are needed`);
  });

  it('moves by itself when the heater is raised', () => {
    applied(room, WARMED, [{...box, at: WARMED, setPoints: {constant: warmC}}]);
    const gained = 10 * (atC - lower);
    const {adults, startChecking} = forecastOf(room, '2031-03-13T12:30', 'R31-014');
    const half = daysLater(WARMED, (degreeDays - gained) / (warmC - lower));
    const early = daysLater(WARMED, (degreeDays * (1 - Z95 * cv) - gained) / (warmC - lower));
    expect(Math.abs(hoursAfter(adults.animal.p50, half))).toBeLessThan(0.5);
    expect(Math.abs(hoursAfter(adults.animal.p05, early))).toBeLessThan(2);
    expect(hoursAfter(startChecking, story.sooner)).toBe(0);
  });
});
