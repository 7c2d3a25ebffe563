// Water that is cooler than the air its logger reads. Everything is invented; the expected instants are K ÷ (T − T0).
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, daysLater, forecastOf, hoursAfter, kind, pupae, said, sample} from './story-room.ts';

const BEGUN = '2031-07-07T09:00';
const NOW = '2031-07-10T12:00';
const stories = [
  {airC: 27, waterC: [24.6, 24.8, 24.5, 24.7], offsetC: -2.35, lower: 11, degreeDays: 110},
  {airC: 24, waterC: [22.1, 22.3, 21.9, 22.1], offsetC: -1.9, lower: 9, degreeDays: 130},
];

describe.each(stories)(
  'a tray at $waterC °C in air of $airC °C',
  ({airC, waterC, offsetC, lower, degreeDays}) => {
    const room = newRoom();
    const tray = {
      record: 'unit',
      code: 'B1',
      type: 'aquarium',
      place: 'rack B/1',
      volumeLitres: 2,
      logger: 'L1',
    };
    const water = (n: number) => ({
      ...{record: 'water', unit: 'B1', at: daysLater(BEGUN, n + 1 / 48), temperature: waterC[n]},
    });
    applied(room, NOW, [
      {record: 'logger', code: 'L1', kind: 'automatic'},
      sample('S1', '2031-07-01'),
      kind({lower, degreeDays, cv: 0.05}),
      tray,
      pupae('Q1', 'S1', 'B1', BEGUN, 50),
      water(0),
      water(1),
    ]);
    const path = join(temporaryFolder(), 'air.csv');
    const rows = Array.from({length: 76}, (_, n) => `${daysLater('2031-07-07T08:00', n / 24)},${airC}`);
    writeFileSync(path, ['time,temperature °C', ...rows, ''].join('\n'));
    said(room, NOW, 'import', 'L1', path);
    const half = (celsius: number) => daysLater(BEGUN, degreeDays / (celsius - lower));

    it('goes by the air as long as the water was measured too seldom', () => {
      expect(said(room, NOW, 'today')).not.toContain('the water of B1');
      const {p50} = forecastOf(room, NOW, 'Q1').adults.animal;
      expect(Math.abs(hoursAfter(p50, half(airC)))).toBeLessThan(1);
    });

    it('says how much cooler the water is once it was measured often enough', () => {
      applied(room, NOW, [water(2), water(3)]);
      expect(said(room, NOW, 'today')).toMatch(
        /the water of B1 was \d\.\d °C cooler than L1 says of it, in 3 measurements\. Give the unit its offset/,
      );
    });

    it('goes by the water once the unit has that offset: later than by the air', () => {
      applied(room, NOW, [{...tray, offsetC, at: BEGUN}]);
      const {p50} = forecastOf(room, NOW, 'Q1').adults.animal;
      expect(Math.abs(hoursAfter(p50, half(airC + offsetC)))).toBeLessThan(1);
    });
  },
);
