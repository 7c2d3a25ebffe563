// A logger whose battery died: the gap is filled from the logger beside it, and said to be. Everything is invented.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, daysLater, forecastOf, kind, pupae, said, sample} from './story-room.ts';

const stories = [
  {
    from: '2031-04-11T02:40',
    to: '2031-04-13T12:40',
    hours: 58,
    roomC: 20.5,
    warmerC: 0.8,
    lower: 10,
    heldC: 19.3,
  },
  {
    from: '2031-04-10T06:40',
    to: '2031-04-11T18:40',
    hours: 36,
    roomC: 18,
    warmerC: -1.2,
    lower: 8,
    heldC: 18,
  },
];

describe.each(stories)(
  'a logger silent for $hours hours',
  ({from, to, hours, roomC, warmerC, lower, heldC}) => {
    const room = newRoom();
    const folder = temporaryFolder();
    /** Hourly readings from one instant to another, as a logger writes them. */
    const file = (
      name: string,
      spans: readonly (readonly [string, string])[],
      celsius: number,
      swing: number,
    ) => {
      const rows = spans.flatMap(([first, last]) => {
        const start = Date.parse(`${first}Z`);
        const count = Math.round((Date.parse(`${last}Z`) - start) / 3_600_000);
        return Array.from({length: count + 1}, (_, n) => {
          const at = new Date(start + n * 3_600_000).toISOString();
          return `${at},${(celsius + (n % 2 === 0 ? swing : -swing)).toFixed(2)}`;
        });
      });
      const path = join(folder, name);
      writeFileSync(path, ['time,temperature °C', ...rows, ''].join('\n'));
      return path;
    };
    const begun = `2031-03-27T${from.slice(11)}`;
    const after = `${to.slice(0, 10)}T23:40`;
    const unitC = roomC + warmerC;
    const shelf = (code: string, logger: string) => ({
      record: 'unit',
      code,
      type: 'cage',
      place: `rack A/${code}`,
      logger,
    });
    applied(room, begun, [
      {record: 'logger', code: 'L4', kind: 'automatic'},
      {record: 'logger', code: 'R', kind: 'automatic'},
      sample('S1', '2031-03-20'),
      kind({lower, degreeDays: 400, cv: 0.08}),
      shelf('A4', 'L4'),
      shelf('A5', 'R'),
      pupae('P4', 'S1', 'A4', begun, 20),
    ]);
    said(room, after, 'import', 'R', file('room.csv', [[begun, after]], roomC, 0.2));
    said(
      room,
      after,
      'import',
      'L4',
      file(
        'unit.csv',
        [
          [begun, from],
          [to, after],
        ],
        unitC,
        0.4,
      ),
    );
    const hourFrom = (at: string, hours: number) => daysLater(at, hours / 24).slice(0, 16);
    const days = (Date.parse(`${after}Z`) - Date.parse(`${begun}Z`)) / 86_400_000;

    it('counts the degree-days of the gap by the logger beside it, moved by how unlike they are', () => {
      const {degreeDays, readings} = forecastOf(room, after, 'P4');
      expect(degreeDays.accumulated).toBeCloseTo(days * (unitC - lower), 0);
      expect(readings.filledHours).toBeCloseTo(hours, 0);
    });

    it('says what was filled in, from where', () => {
      expect(said(room, after, 'forecast', 'P4', '--why')).toMatch(
        /other logger R \d+ %.* gaps .*another logger/,
      );
    });

    it('reckons anew when the missing hours are imported after all', () => {
      said(
        room,
        after,
        'import',
        'L4',
        file('late.csv', [[hourFrom(from, 1), hourFrom(to, -1)]], heldC, 0.2),
      );
      const {degreeDays, readings} = forecastOf(room, after, 'P4');
      const known = days * (unitC - lower) - (hours / 24) * (unitC - heldC);
      expect(Math.abs(degreeDays.accumulated - known)).toBeLessThan(0.5);
      expect(readings.filledHours).toBe(0);
    });
  },
);
