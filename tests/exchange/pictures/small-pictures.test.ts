import * as fc from 'fast-check';
import {expect, it} from 'vitest';
import {cut, cutLine, fill, widthOf, wrap} from '../../../src/exchange/pictures/fit.ts';
import {ASCII, glyphsFor, UNICODE} from '../../../src/exchange/pictures/glyphs.ts';
import {piece, textOf, textOfLines} from '../../../src/exchange/pictures/line.ts';
import {stageBar} from '../../../src/exchange/pictures/stage-bar.ts';
import {stageLetter} from '../../../src/exchange/pictures/stage-letter.ts';
import {tree} from '../../../src/exchange/pictures/tree.ts';

it('every stage has one sign; instars go on with letters after nine', () => {
  const stages = [
    'egg',
    'larva-1',
    'nymph-9',
    'larva-10',
    'nymph-25',
    'larva',
    'nymph',
    'prepupa',
    'pupa',
    'subimago',
  ];
  expect(stages.map(stageLetter).join('')).toBe('e19APlnqps');
});

it('a stage bar is divided by shares, in order of development, and said in words', () => {
  expect(textOf(stageBar({pupa: 0.38, 'larva-5': 0.62}, 20))).toBe(
    '555555555555pppppppp  larva-5 62 %, pupa 38 %',
  );
  expect(textOf(stageBar({pupa: 5, 'larva-5': 18}, 20, 'count'))).toBe(
    '5555555555555555pppp  18 larva-5, 5 pupa',
  );
  expect(textOf(stageBar({}, 20))).toBe('nothing alive');
});

it('a stage bar is always as wide as it was asked for', () => {
  const shares = fc.dictionary(
    fc.constantFrom('egg', 'larva-1', 'larva-2', 'pupa', 'adult'),
    fc.double({min: 0.01, max: 1, noNaN: true}),
    {minKeys: 1},
  );
  fc.assert(
    fc.property(shares, fc.integer({min: 5, max: 80}), (shares, width) => {
      expect(stageBar(shares, width)[0]!.text).toHaveLength(width);
    }),
  );
});

const root = {
  text: 'field sample 26-031',
  children: [
    {
      text: 'lot 26-031-A',
      children: [
        {text: '26-031-A-1, female', children: []},
        {text: '26-031-A-2, male, with a long remark', children: []},
      ],
    },
    {text: 'lot 26-031-B', children: []},
  ],
};

it('a tree sets every child one step in and is cut to the width', () => {
  expect(textOfLines(tree(root, UNICODE, 30))).toBe(
    `field sample 26-031
├─ lot 26-031-A
│  ├─ 26-031-A-1, female
│  └─ 26-031-A-2, male, with …
└─ lot 26-031-B`,
  );
  expect(textOfLines(tree(root, ASCII))).toBe(
    `field sample 26-031
|- lot 26-031-A
|  |- 26-031-A-1, female
|  \`- 26-031-A-2, male, with a long remark
\`- lot 26-031-B`,
  );
});

it('lines and texts fit the cells they are given', () => {
  expect(cut('abcdef', 4)).toBe('abc…');
  expect(cut('中文字', 4)).toBe('中…');
  expect(fill('ab', 4)).toBe('ab  ');
  expect(textOf(cutLine([piece('abc'), piece('def', 'seen')], 4))).toBe('abc…');
  expect(wrap('one two  three', 7)).toEqual(['one two', 'three']);
});

it('every sign is one cell wide', () => {
  const signs = (set: object): string[] =>
    Object.values(set).flatMap(value =>
      typeof value === 'string'
        ? [...value]
        : typeof value === 'object' && value !== null
          ? signs(value)
          : [],
    );
  for (const sign of [...signs(UNICODE), ...signs(ASCII), '⠀', '⣿']) expect(widthOf([piece(sign)])).toBe(1);
});

it('a locale without UTF-8, and a bare console, get ASCII', () => {
  expect(glyphsFor({LANG: 'de_DE.UTF-8'})).toBe(UNICODE);
  expect(glyphsFor({LANG: 'de_DE.UTF-8', LC_ALL: 'C'})).toBe(ASCII);
  expect(glyphsFor({LANG: 'en_GB.utf8', TERM: 'linux'})).toBe(ASCII);
  expect(glyphsFor({})).toBe(ASCII);
});
