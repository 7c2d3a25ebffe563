// A field sample: a tree down to every specimen and vial. What is missing stands out by words.

import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {tree} from '../../exchange/pictures/tree.ts';
import {cautionsOf, methods, trapInWords} from '../../records/methods.ts';
import {whenWritten} from '../../records/plain-words.ts';
import {waitedHours, waitedWords} from '../../records/standing.ts';
import type {Sample as FieldSample} from '../../records/state.ts';
import type {Desk} from '../../work/desk.ts';
import {actsKey} from '../acts/acts.ts';
import {askNote} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {labelsKey} from '../out/out-keys.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {deskWith} from '../whole-desk.ts';
import {openEnds} from './open-ends.ts';

type Sample = SheetOf<'sample'>;

const keys: readonly Binding<Sample, View, Step<Sample>>[] = [
  {
    strokes: ['enter'],
    short: 'lot',
    says: 'open the first of its lots that is open',
    hint: true,
    disabled: (sheet, view) => (openLot(sheet, view) === undefined ? 'none of its lots is open' : undefined),
    act: (sheet, view) => ({open: {kind: 'lot', code: openLot(sheet, view)!, scroll: 0}}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about the field sample',
    hint: true,
    act: ({code}) => ({ask: askNote(code)}),
  },
  labelsKey<Sample>('sample'),
  actsKey<Sample>('sample'),
  ...scrollKeys<Sample>(),
];

export const sample: SheetPart<Sample> = {
  title: 'a field sample',
  keys,
  draw: drawSample,
  needs: ({code}, {trees}) =>
    trees.has(`down ${code}`) ? [] : [{do: 'tree', key: `down ${code}`, code, way: 'down'}],
};

function drawSample(sheet: Sample, view: View, room: Room): Page {
  const desk = deskWith(sheet.code, view);
  const loaded = view.trees.get(`down ${sheet.code}`);
  const known = desk.state.samples.get(sheet.code);
  const lines =
    loaded === undefined
      ? [line(' What came of it is being looked up …', 'expected')]
      : 'failed' in loaded
        ? [line(` ${loaded.failed.message}`, 'late')]
        : tree(loaded.value, view.glyphs, room.columns - 2).map((one): Line => [piece(' '), ...one]);
  return {
    head: `field sample ${sheet.code}${known === undefined ? '' : ` ${view.glyphs.dot} ${howCollected(known)}`}`,
    aside: whereScrolled(lines.length, sheet.scroll, room.body),
    body: scrolled(lines, sheet.scroll, room.body),
    detail: [
      ...(known === undefined ? [] : aboutSample(known, desk)),
      ...openEnds(sheet.code, desk).map(text => line(` ${text}`, 'late')),
      ...(known === undefined ? [] : cautionsOf(known).map(caution => line(` care   ${caution}`))),
    ],
  };
}

/** How the trap stood, how its animals fared, how far it is sorted, what else was in it. */
function aboutSample(sample: FieldSample, {civil}: Desk): Line[] {
  const {trap = {}, sorting, bycatch, specimens} = sample;
  const stood = trapInWords(trap);
  const waited = waitedHours(sample, civil);
  return [
    ...(stood === '' ? [] : [line(` ${stood}`)]),
    ...(waited === undefined ? [] : [line(` ${waitedWords(waited)}`, 'late')]),
    ...(sorting === undefined || sorting.state === 'sorted'
      ? []
      : [line(` ${sorting.state === 'partly' ? 'sorted only in part' : 'not sorted yet'}`, 'late')]),
    ...bycatch.map(({count, what, done}) => line(` by-catch: ${count} ${what}, ${done}`)),
    ...(specimens.length === 0 ? [] : [line(` taken out dead: ${specimens.join(' ')}`)]),
  ];
}

function howCollected({method, collected, place, host, of}: FieldSample): string {
  const from = whenWritten(collected.from);
  const span = collected.to === undefined ? from : `${from} to ${whenWritten(collected.to)}`;
  return [of && `part of ${of}`, methods[method].words, span, place?.locality, host]
    .filter(part => part !== undefined)
    .join(', ');
}

function openLot({code}: Sample, {facts: {desk}}: View): string | undefined {
  return [...desk.state.lots.values()].find(lot => lot.sample === code && lot.closed === undefined)?.code;
}
