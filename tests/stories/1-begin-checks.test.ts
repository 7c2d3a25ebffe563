// When to begin looking at band larvae, and what a warmer box does to it. Everything is invented; the expected instants
// are K × (1 ± 1.645 CV) ÷ (T − T0). A lead of three days and daily looks are common practice, no source.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {
  applied,
  daysLater,
  type Forecast,
  forecastOf,
  hoursAfter,
  kind,
  pupae,
  said,
  sample,
  Z95,
} from './story-room.ts';

const hours = ['09:00-17:00'];
const stories = [
  {
    ...{lower: 10, degreeDays: 250, cv: 0.08, atC: 22, warmC: 25, begun: '2031-03-03T12:00', after: 10},
    ...{first: '2031-03-18T09:00', sooner: '2031-03-17T09:00'},
    ...{lookFrom: 'Tue 18 March 09:00', lookSooner: 'Mon 17 March 09:00'},
  },
  {
    ...{lower: 8, degreeDays: 300, cv: 0.06, atC: 20, warmC: 24, begun: '2031-03-03T12:00', after: 10},
    ...{first: '2031-03-24T09:00', sooner: '2031-03-19T09:00'},
    ...{lookFrom: 'Mon 24 March 09:00', lookSooner: 'Wed 19 March 09:00'},
  },
  {
    // The warmer box has all of them out before the weekend: no visit is asked for any more.
    ...{lower: 6, degreeDays: 190, cv: 0.03, atC: 19, warmC: 22, begun: '2031-05-09T18:00', after: 6},
    ...{first: '2031-05-20T09:00', sooner: '2031-05-19T09:00'},
    ...{lookFrom: 'Tue 20 May 09:00', lookSooner: 'Mon 19 May 09:00'},
  },
];

interface Looked extends Forecast {
  readonly nextCheck: string;
}

describe.each(stories)('$degreeDays degree-days above $lower °C in a box at $atC °C', story => {
  const {lower, degreeDays, cv, atC, warmC, begun, after, first, sooner} = story;
  const room = newRoom();
  applied(room, begun, [
    {
      record: 'calendar',
      at: '2031-01-01T00:00',
      open: {mon: hours, tue: hours, wed: hours, thu: hours, fri: hours},
    },
    sample('S31-0052', '2031-02-01'),
    kind({lower, degreeDays, cv}),
    {
      ...{record: 'unit', code: 'C2', type: 'emergence-box', place: 'rack C/2'},
      setPoints: {constant: atC},
    },
    pupae('R31-014', 'S31-0052', 'C2', begun, 38),
  ]);
  const soon = daysLater(begun, 1 / 24).slice(0, 16);
  const warmed = daysLater(begun, after).slice(0, 16);
  const outAt = (share: number) => daysLater(begun, (degreeDays * (1 + share * cv)) / (atC - lower));
  const outWarmer = (share: number) => {
    const left = degreeDays * (1 + share * cv) - after * (atC - lower);
    return daysLater(warmed, left / (warmC - lower));
  };
  const ask = (now: string) => forecastOf(room, now, 'R31-014') as Looked;
  const within = (hoursOff: number, told: string, expected: string) =>
    expect(Math.abs(hoursAfter(told, expected))).toBeLessThan(hoursOff);
  /** Closed days of which some part lies between 5 and 95 % out, as the program names them. */
  const closedIn = (from: string, to: string) =>
    Array.from({length: 40}, (_, n) => daysLater(`${begun.slice(0, 10)}T00:00`, n))
      .filter(
        day =>
          [0, 6].includes(new Date(day).getUTCDay()) && daysLater(day.slice(0, 16), 1) > from && day < to,
      )
      .map(day => {
        const words = {weekday: 'short', day: 'numeric', month: 'short', timeZone: 'UTC'} as const;
        return new Date(day).toLocaleDateString('en-GB', words).replace(',', '');
      });
  const asks = (now: string) => said(room, now, 'today');

  it('expects 5 %, half and 95 % when the degree-days say so', () => {
    const {p05, p50, p95} = ask(soon).adults.animal;
    within(2, p05, outAt(-Z95));
    within(0.5, p50, outAt(0));
    within(2, p95, outAt(Z95));
  });

  it('begins to look at the latest open round three days before 5 % are out', () => {
    within(0.01, ask(soon).startChecking, first);
    expect(hoursAfter(outAt(-Z95), first)).toBeGreaterThanOrEqual(24);
    expect(said(room, soon, 'forecast', 'R31-014')).toContain(`look from ${story.lookFrom}`);
  });

  it('asks beforehand for a visit on each closed day on which adults may come out', () => {
    const now = daysLater(first, -6).slice(0, 16);
    const days = closedIn(outAt(-Z95), outAt(Z95));
    expect(days.length).toBeGreaterThan(0);
    for (const day of days) expect(asks(now)).toContain(`on ${day} (look C2)`);
    expect(asks(now)).toContain(days.length === 1 ? 'a visit is needed' : `${days.length} visits are needed`);
  });

  it('moves by itself when the heater is raised', () => {
    said(room, warmed, 'unit', 'C2', '--hold', String(warmC));
    const now = daysLater(warmed, 1 / 48).slice(0, 16);
    const {adults, startChecking} = ask(now);
    within(2, adults.animal.p05, outWarmer(-Z95));
    within(0.5, adults.animal.p50, outWarmer(0));
    within(2, adults.animal.p95, outWarmer(Z95));
    within(0.01, startChecking, sooner);
    expect(said(room, now, 'forecast', 'R31-014')).toContain(`look from ${story.lookSooner}`);
  });

  it('keeps the visits that are still needed, and asks for none before adults may come', () => {
    const now = daysLater(warmed, 1 / 48).slice(0, 16);
    const all = closedIn(begun, daysLater(begun, 30));
    const days = closedIn(outWarmer(-Z95), outWarmer(Z95));
    for (const day of all)
      if (days.includes(day)) expect(asks(now)).toContain(`on ${day} (look C2)`);
      else expect(asks(now)).not.toContain(`${day} (look C2)`);
  });

  it('wants a look on every open day after the first', () => {
    const seen = daysLater(sooner, 1 / 96).slice(0, 16);
    applied(room, seen, [{record: 'check', lot: 'R31-014', at: seen, found: 0}]);
    const {nextCheck} = ask(daysLater(sooner, 1 / 48).slice(0, 16));
    const days = [1, 2, 3].map(n => daysLater(sooner, n));
    within(0.01, nextCheck, days.find(day => ![0, 6].includes(new Date(day).getUTCDay()))!);
  });
});
