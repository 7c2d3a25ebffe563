import {expect, it} from 'vitest';
import type {Stretch} from '../../../src/climate/course.ts';
import {civil} from '../../../src/exchange/civil.ts';
import {type CoursePlot, coursePlot} from '../../../src/exchange/pictures/course-plot.ts';
import {widthOf} from '../../../src/exchange/pictures/fit.ts';
import {ASCII, UNICODE} from '../../../src/exchange/pictures/glyphs.ts';
import {textOfLines} from '../../../src/exchange/pictures/line.ts';
import {MS_PER_DAY} from '../../../src/records/entry.ts';

const berlin = civil('Europe/Berlin');
const fromDays = berlin.at('2026-06-08', '00:00') / MS_PER_DAY;
const toDays = fromDays + 4;
const nowDays = fromDays + 2.5;
const hours = Array.from({length: 97}, (_, i) => i);
const stretch = (from: number, to: number, basis: Stretch['basis']): Stretch => ({
  fromDays: fromDays + from,
  toDays: fromDays + to,
  basis,
});

/** Warm by day: a triangle between 16 °C at midnight and 24 °C at noon. */
const plot: CoursePlot = {
  course: {
    atDays: Float64Array.from(hours, hour => fromDays + hour / 24),
    temperatureC: Float64Array.from(hours, hour => 24 - (8 * Math.abs((hour % 24) - 12)) / 12),
    stretches: [
      stretch(0, 1.5, 'logger'),
      stretch(1.5, 2, 'mean-day'),
      stretch(2, 2.5, 'logger'),
      stretch(2.5, 4, 'expected'),
    ],
  },
  fromDays,
  toDays,
  nowDays,
  levels: [
    {valueC: 8, name: 'larva-5 from'},
    {valueC: 20, name: 'set to'},
    {valueC: 30, name: 'larva-5 up to'},
  ],
  civil: berlin,
};

const drawn = (given: CoursePlot, columns: number, rows: number, glyphs = UNICODE) =>
  `\n${textOfLines(coursePlot(given, {columns, rows}, glyphs))}`;

it('a course is drawn between its thresholds, with what it rests on and the days below', () => {
  expect(drawn(plot, 72, 14)).toMatchInlineSnapshot(`
    "
    30 °C │┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄ larva-5 up to 30.0 ┄
          │                                        ┃
          │                                        ┃
       25 │      ⢀⡴⢦⡀             ⣠⠆⡄             ⣠⠶⡄              ⡄⠆⡀
          │    ⢀⡴⠋  ⠙⢦⡀         ⣠⠞⠁  ⠃⡄         ⣠⠞⠁┃ ⠃⡄          ⡄⠃  ⠁⠆⡀
       20 │┄┄┄⣰⠋┄┄┄┄┄┄⠙⢦⡀┄┄┄┄┄⣠⠞⠁┄┄┄┄┄┄⠃⡀┄┄┄┄┄⢀⡞⠁┄┄┄┄┄┄⠃⡄┄ set to 20.0 ⠁⡆┄┄┄
          │ ⣠⠞⠁         ⠙⢦⡀ ⣠⠞⠁         ⠁⠆⡀ ⢀⡴⠋    ┃     ⠃⡄  ⡄⠃          ⠃⡄
       15 │⠞⠁             ⠙⠞⠁             ⠁⠶⠋      ┃       ⠃⠃              ⠃
          │                                        ┃
          │                                        ┃
       10 │                                        ┃
          │┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄┄ larva-5 from 8.0 ┄
           ━━━━━━━━━ read ━━━━━━━━━╌╌╌╌╌╌╌╌━ read ━━······· expected ·······
           Mon 8   12:00   Tue 9   12:00    Wed 10  12:00   Thu 11  12:00"
  `);
});

it('without Unicode the same is drawn in plain signs', () => {
  expect(drawn(plot, 72, 14, ASCII)).toMatchInlineSnapshot(`
    "
    30 °C |-------------------------------------------- larva-5 up to 30.0 -
          |                                        |
          |                                        |
       25 |       ***             *oo             **.             ...
          |     *** ***         *** ooo         ***|...         ... ...
       20 |---***-----***-----***-----ooo-----***-----... set to 20.0 ...---
          | ***         *** ***         ooo ***    |    ... ...         ...
       15 |**             ***             o**      |      ...             ..
          |                                        |
          |                                        |
       10 |                                        |
          |---------------------------------------------- larva-5 from 8.0 -
           ========= read =========~~~~~~~~= read ==....... expected .......
           Mon 8   12:00   Tue 9   12:00    Wed 10  12:00   Thu 11  12:00"
  `);
});

it('the smallest size still shows levels, course, ground and time', () => {
  expect(drawn(plot, 40, 8)).toMatchInlineSnapshot(`
    "
    30 °C │┄┄┄┄┄┄┄┄┄┄┄┄ larva-5 up to 30.0 ┄
          │   ⢀⣄      ⢀⡄       ⣠⡀      ⡀⡀
       20 │┄⢀⡴⠋⠈⠳⣄ set to 20.0 ⠁⠁⠆⡀┄┄⡀⠆⠁⠁⠆⡀┄
          │⡴⠋    ⠈⠳⡴⠋     ⠃⡄⠞⠁ ┃  ⠁⠆⠆⠁    ⠁⠆
          │                    ┃
       10 │┄┄┄┄┄┄┄┄┄┄┄┄┄┄ larva-5 from 8.0 ┄
           ━━━ read ━━━╌╌╌╌╌━━━━· expected ·
           Mon 8   Tue 9    Wed 10  Thu 11"
  `);
});

it('humidity is a band of its own, blank where nothing was read', () => {
  const humidity = {
    atDays: [fromDays, fromDays + 0.2, fromDays + 2, fromDays + 2.2],
    rhPercent: [55, 55, 95, 95],
  };
  expect(drawn({...plot, humidity, levels: []}, 50, 9, ASCII)).toMatchInlineSnapshot(`
    "
          |    **         *o         *.         ..
          |   ****       **oo       **..       ....
          |  **  ***    **  oo     **| ..    ...  ..
    20 °C | **     **  **    oo   ** |  ..  ..     ..
          |**       ****      oo **  |   ....       ..
          |*         **        oo*   |    ..         .
     % RH |555                  999
           ===== read =====~~~~~~=====... expected ...
           Mon 8      Tue 9      Wed 10    Thu 11"
  `);
});

it('what is unknown stays blank and is named so', () => {
  const course = {
    atDays: Float64Array.of(fromDays, fromDays + 2, fromDays + 2, toDays),
    temperatureC: Float64Array.of(20, 20, Number.NaN, Number.NaN),
    stretches: [stretch(0, 2, 'logger'), stretch(2, 4, 'unknown')],
  };
  expect(drawn({...plot, course, levels: []}, 50, 8, ASCII)).toMatchInlineSnapshot(`
    "
    22 °C |                          |
          |                          |
          |                          |
       20 |*********************     |
          |                          |
       18 |                          |
           ======= read ========       unknown
           Mon 8      Tue 9      Wed 10    Thu 11"
  `);
});

it.each([
  [40, 8],
  [80, 24],
  [200, 40],
])('at %i by %i every line keeps within the size', (columns, rows) => {
  for (const glyphs of [UNICODE, ASCII]) {
    const lines = coursePlot(plot, {columns, rows}, glyphs);
    expect(lines).toHaveLength(rows);
    expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(columns);
  }
});

it.each([
  [7, 60],
  [-12, 30],
])('the values keep to their column, also half degrees and frost: %i °C in %i rows', (warmestC, rows) => {
  const course = {...plot.course, temperatureC: plot.course.temperatureC.map(t => (t - 20) / 16 + warmestC)};
  const lines = textOfLines(coursePlot({...plot, course, levels: []}, {columns: 60, rows}, ASCII)).split(
    '\n',
  );
  expect(lines.slice(0, rows - 2).map(line => line.indexOf('|'))).toEqual(Array(rows - 2).fill(6));
  expect(lines.join('\n')).toContain('°');
});
