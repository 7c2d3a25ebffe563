import {expect, it} from 'vitest';
import {civil} from '../../../src/exchange/civil.ts';
import {type EmergenceCurve, emergenceCurve} from '../../../src/exchange/pictures/emergence-curve.ts';
import {widthOf} from '../../../src/exchange/pictures/fit.ts';
import {ASCII, UNICODE} from '../../../src/exchange/pictures/glyphs.ts';
import {textOfLines} from '../../../src/exchange/pictures/line.ts';
import {MS_PER_DAY} from '../../../src/records/entry.ts';

const berlin = civil('Europe/Berlin');
const from = berlin.at('2026-06-10', '00:00') / MS_PER_DAY;
const curve: EmergenceCurve = {
  perDay: [0.05, 0.1, 0.2, 0.3, 0.2, 0.1, 0.05].map((probability, i) => ({
    fromDays: from + i,
    toDays: from + i + 1,
    probability,
  })),
  animal: {p10: from + 1.5, p50: from + 3.5, p90: from + 5.5},
  came: [
    {atDays: from - 1.5, count: 2},
    {atDays: from - 0.5, count: 11},
  ],
  nowDays: from + 0.4,
  civil: berlin,
};

it('chances per day stand as bars over the window of four in five, beside the adults that came', () => {
  expect(`\n${textOfLines(emergenceCurve(curve, {columns: 60, rows: 9}, UNICODE))}`).toMatchInlineSnapshot(`
    "
     30 % a day                     ████
                                    ████
                                ████████████
                                ████████████
                            ████████████████████
                        ████████████████████████████
    came out    2   11
    4 in 5               ┃    ├───────┼───────┤
                8 Jun   Wed Thu Fri Sat Sun 15 Jun  Wed"
  `);
});

it('in ASCII and few columns several days share a bar', () => {
  const lines = emergenceCurve(curve, {columns: 18, rows: 7}, ASCII);
  expect(`\n${textOfLines(lines)}`).toMatchInlineSnapshot(`
    "
     25 % a day   #
                  #:
                 .##
                 ###:
    came out    +
    4 in 5       |+]
    "
  `);
  expect(Math.max(...lines.map(widthOf))).toBeLessThanOrEqual(18);
});

it('where there is nothing to draw there is no line', () => {
  const nothing = {...curve, perDay: [], came: []};
  const hardlyAny = {...nothing, perDay: [{fromDays: from, toDays: from + 1, probability: 1e-5}]};
  expect(emergenceCurve(hardlyAny, {columns: 60, rows: 9}, UNICODE)).toEqual([]);
  expect(emergenceCurve(nothing, {columns: 60, rows: 9}, UNICODE)).toEqual([]);
});
