// A logger whose battery died: the gap is filled from the logger beside it, and said to be. Everything is invented. The
// filled part is hours ÷ 24 × (the logger beside it + how unlike they are − T0), and it is as far off as that was in the
// days in which both read, throughout the gap.
import {readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, daysLater, type Forecast, forecastOf, kind, pupae, said, sample} from './story-room.ts';

const stories = [
  {
    ...{from: '2031-04-11T02:40', to: '2031-04-13T12:40', hours: 58, sumBefore: 163.1},
    ...{roomC: 20.5, unlikeC: 0.8, spreadC: 0.4, unlike: '+0.8 ± 0.4', lower: 10, heldC: 19.3},
    ...{told: '190.4 of 400 degree-days above 10 °C as pupa; 27.3 ± 1.0 of them, 14 %, are estimated'},
    gap: 'Fri 11 Apr 02:40 to Sun 13 Apr 12:40, 58 h without a reading of A4',
  },
  {
    ...{from: '2031-04-10T06:40', to: '2031-04-11T18:40', hours: 36, sumBefore: 112},
    ...{roomC: 18, unlikeC: -1.2, spreadC: 0.6, unlike: '-1.2 ± 0.6', lower: 8, heldC: 18},
    // 1.5 d × (16.8 − 8) = 13.2, ± 1.5 × 0.6; of 125.2.
    ...{told: '125.2 of 400 degree-days above 8 °C as pupa; 13.2 ± 0.9 of them, 11 %, are estimated'},
    gap: 'Thu 10 Apr 06:40 to Fri 11 Apr 18:40, 36 h without a reading of A4',
  },
];

interface Estimated extends Forecast {
  readonly degreeDays: Forecast['degreeDays'] & {
    readonly estimated: {
      readonly degreeDays: number;
      readonly within: number;
      readonly share: number;
      readonly datesHours: number;
    } | null;
  };
  readonly adults: Forecast['adults'] & {readonly half: {readonly p50: string}};
}

describe.each(stories)('a logger silent for $hours hours', story => {
  const {from, to, hours, sumBefore, roomC, unlikeC, spreadC, unlike, lower, heldC, told, gap} = story;
  const room = newRoom();
  const folder = temporaryFolder();
  const hourOf = (at: string, later: number) => daysLater(at, later / 24).slice(0, 16);
  /** Hourly readings of so many hours up to an instant, as a logger writes them. */
  const rows = (until: string, count: number, celsius: number, swing: number) =>
    Array.from({length: count + 1}, (_, n) => {
      const value = celsius + (n % 2 === 0 ? swing : -swing);
      return `${daysLater(until, (n - count) / 24)},${value.toFixed(2)}`;
    });
  const file = (name: string, lines: readonly string[]) => {
    const path = join(folder, name);
    writeFileSync(path, ['time,temperature °C', ...lines, ''].join('\n'));
    return path;
  };
  const unitC = roomC + unlikeC;
  const begun = daysLater(from, -sumBefore / (unitC - lower)).slice(0, 19);
  const shelf = (code: string, logger: string) => ({
    ...{record: 'unit', code, type: 'cage', place: `rack A/${code}`, logger},
  });
  applied(room, begun, [
    {record: 'logger', code: 'L4', kind: 'automatic'},
    {record: 'logger', code: 'R', kind: 'automatic'},
    sample('S1', '2031-03-01'),
    kind({lower, degreeDays: 400, cv: 0.08}),
    shelf('A4', 'L4'),
    shelf('A5', 'R'),
    pupae('P4', 'S1', 'A4', `${begun}Z`, 20),
  ]);
  const unitFile = file('unit.csv', [...rows(from, 480, unitC, spreadC), ...rows(to, 0, unitC, spreadC)]);
  const written = readFileSync(unitFile, 'utf8');
  said(room, to, 'import', 'R', file('room.csv', rows(to, 600, roomC, 0)));
  said(room, to, 'import', 'L4', unitFile);
  const ask = (): Estimated => forecastOf(room, to, 'P4') as Estimated;
  const silent = ['readings', 'L4', '--from', hourOf(from, 0.5), '--to', hourOf(to, -0.5)];
  const perDay = unitC - lower;
  const filled = (hours / 24) * perDay;

  it('counts the degree-days of the gap by the logger beside it, and says how far off that may be', () => {
    const {degreeDays, readings} = ask();
    expect(Math.abs(degreeDays.accumulated - (sumBefore + filled))).toBeLessThan(0.15);
    expect(readings.filledHours).toBeCloseTo(hours, 1);
    const {estimated} = degreeDays;
    expect(Math.abs(estimated!.degreeDays - filled)).toBeLessThan(0.1);
    expect(Math.abs(estimated!.within - (hours / 24) * spreadC)).toBeLessThan(0.02);
    expect(Math.abs(estimated!.share - filled / (sumBefore + filled))).toBeLessThan(0.002);
    expect(Math.abs(estimated!.datesHours - (24 * (hours / 24) * spreadC) / perDay)).toBeLessThan(0.1);
  });

  it('says so with the forecast, and what fills the gap', () => {
    const words = said(room, to, 'forecast', 'P4', '--why');
    expect(words).toContain(told);
    expect(words).toMatch(/so that the dates may lie \d h earlier or later/);
    expect(words).toContain(`another logger, R, ${unlike} °C`);
  });

  it('hands the gap over to whoever comes next', () => {
    const note = said(room, to, 'handover');
    expect(note).toContain(`${gap}; in its place another logger, R, ${unlike} °C`);
    const {gaps} = room.ask<{gaps: object[]}>(to, 'handover');
    expect(gaps).toMatchObject([{unit: 'A4', logger: 'L4', filledBy: 'other-logger', open: false}]);
  });

  it('leaves what the logger wrote as it is', () => {
    expect(room.ask<{readings: object[]}>(to, ...silent).readings).toEqual([]);
    expect(readFileSync(unitFile, 'utf8')).toBe(written);
  });

  it('reckons anew when the missing hours are imported after all, and says what that changed', () => {
    const before = ask();
    const late = file('late.csv', rows(hourOf(to, -1), hours - 2, heldC, 0.2));
    const words = said(room, to, 'import', 'L4', late);
    const after = ask();
    // From the last reading to the first of the file, and back, it is a straight line of an hour each.
    const known =
      sumBefore + ((hours - 2) / 24) * (heldC - lower) + (2 / 24) * ((unitC + spreadC + heldC) / 2 - lower);
    expect(Math.abs(after.degreeDays.accumulated - known)).toBeLessThan(0.15);
    expect(after.readings.filledHours).toBe(0);
    expect(after.degreeDays.estimated).toBeNull();
    const sums = [before, after].map(({degreeDays}) => degreeDays.accumulated.toFixed(1));
    expect(words).toContain(
      `P4: ${hours.toFixed(1)} h that were estimated are read now; ${sums[0]} → ${sums[1]} degree-days of 400; half out `,
    );
    const isLater = known < sumBefore + filled;
    const [old, now] = [before, after].map(({adults}) => Date.parse(adults.half.p50));
    expect(now! > old!).toBe(isLater);
    expect(words).toMatch(/half out \S+ .* → \S+/);
    expect(room.ask<{gaps: object[]}>(to, 'handover').gaps).toEqual([]);
  });

  it('says the change as fields too, and nothing when the same file comes again', () => {
    const [again] = room.ask<{changed: object[]}[]>(to, 'import', 'L4', join(folder, 'late.csv'));
    expect(again!.changed).toEqual([]);
  });
});
