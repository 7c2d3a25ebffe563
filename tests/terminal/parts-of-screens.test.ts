import {expect, it} from 'vitest';
import {observationOf} from '../../src/care/observations.ts';
import {giveAnswer, typeText} from '../../src/terminal/ask/answering.ts';
import type {AskingAnswers} from '../../src/terminal/ask/asking.ts';
import {bottomLines} from '../../src/terminal/bindings.ts';
import {everywhere} from '../../src/terminal/keys/everywhere.ts';
import {firstShown, layoutOf} from '../../src/terminal/layout.ts';
import {tables} from '../../src/terminal/parts.ts';
import {strokesOf} from '../../src/terminal/strokes.ts';

it.each([
  [80, 24],
  [60, 16],
  [200, 60],
])('a page of %i by %i uses one line less than the window', (columns, rows) => {
  const layout = layoutOf(columns, rows);
  if (layout.kind !== 'page') throw new Error('no page');
  expect(layout.height).toBe(rows - 1);
  expect(4 + layout.body + layout.detail + layout.keys).toBe(rows - 1);
  expect(layout.body).toBeGreaterThanOrEqual(5);
});

it('a window below 60 by 16 holds no page', () => {
  expect(layoutOf(59, 24)).toEqual({kind: 'small', columns: 59, height: 23});
  expect(layoutOf(80, 15)).toEqual({kind: 'small', columns: 80, height: 14});
  expect(layoutOf(1, 1)).toEqual({kind: 'small', columns: 1, height: 1});
});

it('the cursor of a long list stays in sight', () => {
  expect(firstShown(0, 30, 10)).toBe(0);
  expect(firstShown(15, 30, 10)).toBe(10);
  expect(firstShown(29, 30, 10)).toBe(20);
  expect(firstShown(3, 5, 10)).toBe(0);
});

it('keys that arrive together are single strokes', () => {
  expect(strokesOf('sno food\r', {})).toEqual(['s', 'n', 'o', ' ', 'f', 'o', 'o', 'd', 'enter']);
  expect(strokesOf('', {downArrow: true})).toEqual(['down']);
  expect(strokesOf('', {escape: true, meta: true})).toEqual(['escape']);
  expect(strokesOf('', {delete: true})).toEqual(['delete']);
  expect(strokesOf('c', {ctrl: true})).toEqual(['ctrl-c']);
  expect(strokesOf('', {tab: true, shift: true})).toEqual(['back-tab']);
  expect(strokesOf('', {})).toEqual([]);
});

it('no sheet gives one key to two acts', () => {
  for (const {keys} of [...Object.values(tables), {keys: everywhere}]) {
    const strokes = keys.flatMap(({strokes}) => strokes);
    expect(strokes).toHaveLength(new Set(strokes).size);
  }
});

it('the bottom line is cut where there is no more room, with a sign', () => {
  const keys = ['one', 'two', 'three', 'four'].map(short => ({
    strokes: [short[0]!],
    short,
    says: short,
    hint: true,
  }));
  expect(bottomLines(keys, 40, 1, '…')).toEqual(['o one   t two   t three   f four']);
  expect(bottomLines(keys, 18, 2, '…')).toEqual(['o one   t two', 't three   f four']);
  expect(bottomLines(keys, 18, 1, '…')).toEqual(['o one   t two …']);
});

const questions: AskingAnswers = {
  kind: 'answers',
  groups: [{title: 'C1 feed', ids: ['feed:1'], questions: ['foodLeft', 'mould', 'alive'].map(observationOf)}],
  answers: [[]],
  typed: '',
};

function answered(...strokes: string[]) {
  let asking = questions;
  for (const stroke of strokes) {
    const next = giveAnswer(asking, stroke);
    if (next.kind !== 'asking') return next;
    asking = next.asking;
  }
  return {kind: 'asking' as const, asking};
}

it('one key gives an answer; a number is typed and kept with enter or space', () => {
  const done = {...questions, answers: [['some', false, 18]]};
  expect(answered('s', 'n', '1', '8', 'enter')).toEqual({kind: 'done', asking: done});
  expect(answered('s', 'n', '1', '8', ' ')).toEqual({kind: 'done', asking: done});
});

it('nothing is preset: space and enter answer nothing, and the possible answers are said', () => {
  expect(giveAnswer(questions, ' ')).toEqual({
    kind: 'asking',
    asking: questions,
    say: 'Answer n for none, s for some, m for much; escape leaves it.',
  });
  const number = {...questions, answers: [['some', false]]};
  expect(giveAnswer(number, 'enter')).toMatchObject({say: expect.stringContaining('a whole number from 0')});
});

it('delete takes the last digit, then the last answer back; escape leaves everything', () => {
  expect(answered('s', 'n', '1', 'delete')).toMatchObject({asking: {answers: [['some', false]], typed: ''}});
  expect(answered('s', 'n', 'delete')).toMatchObject({asking: {answers: [['some']]}});
  expect(answered('s', 'escape')).toEqual({kind: 'given-up'});
});

it('an empty text is not kept', () => {
  const asking = {kind: 'text', label: 'why', text: ' ', purpose: {for: 'note', about: 'C1'}} as const;
  expect(typeText(asking, 'enter')).toMatchObject({
    kind: 'asking',
    say: expect.stringContaining('Type a text'),
  });
  expect(typeText({...asking, text: ' no food '}, 'enter')).toMatchObject({
    kind: 'done',
    asking: {text: 'no food'},
  });
});
