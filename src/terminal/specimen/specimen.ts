// A specimen: what it is, how it came out, what was done to keep it, every name it ever had, and where it comes from.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {tree} from '../../exchange/pictures/tree.ts';
import {actsKey} from '../acts/acts.ts';
import {askNote} from '../ask/ask-text.ts';
import type {Binding} from '../bindings.ts';
import {formSheet} from '../form/form.ts';
import {labelsKey} from '../out/out-keys.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';
import {deskWith} from '../whole-desk.ts';
import {specimenLines} from './specimen-lines.ts';

type Specimen = SheetOf<'specimen'>;

const keys: readonly Binding<Specimen, View, Step<Specimen>>[] = [
  {
    strokes: ['i'],
    short: 'identify',
    says: 'give it its name, or another one',
    hint: true,
    act: ({code}) => ({open: formSheet('identify', code)}),
  },
  {
    strokes: ['p'],
    short: 'prepare',
    says: 'killed, prepared, stored',
    hint: true,
    act: ({code}) => ({open: formSheet('prepare', code)}),
  },
  {
    strokes: ['n'],
    short: 'note',
    says: 'write a remark about it',
    hint: true,
    act: ({code}) => ({ask: askNote(code)}),
  },
  {
    strokes: ['o'],
    short: 'origin',
    says: 'open the field sample it comes from',
    hint: true,
    disabled: (sheet, view) => (sampleOf(sheet, view) === undefined ? 'it is not known here' : undefined),
    act: (sheet, view) => ({open: {kind: 'sample', code: sampleOf(sheet, view)!, scroll: 0}}),
  },
  labelsKey<Specimen>('specimen'),
  actsKey<Specimen>('specimen'),
  ...scrollKeys<Specimen>(),
];

export const specimen: SheetPart<Specimen> = {
  title: 'a specimen',
  keys,
  draw: drawSpecimen,
  needs: ({code}, {trees}) =>
    trees.has(`up ${code}`) ? [] : [{do: 'tree', key: `up ${code}`, code, way: 'up'}],
};

function drawSpecimen(sheet: Specimen, view: View, room: Room): Page {
  const desk = deskWith(sheet.code, view);
  const own = desk.state.specimens.get(sheet.code);
  if (own === undefined)
    return {
      head: sheet.code,
      aside: '',
      body: [line(` There is no specimen ${sheet.code} here.`)],
    };
  const {dot} = view.glyphs;
  const all = [
    ...specimenLines(own, desk),
    [],
    line(' comes from', 'heading'),
    ...chain(sheet.code, view, room),
  ];
  const lines = room.body + room.detail;
  return {
    head: `${own.code} ${dot} ${own.taxon ?? 'not yet identified'}`,
    aside: whereScrolled(all.length, sheet.scroll, lines),
    body: scrolled(all, sheet.scroll, lines),
  };
}

function chain(code: string, view: View, room: Room): Line[] {
  const loaded = view.trees.get(`up ${code}`);
  if (loaded === undefined) return [line(' is being looked up …', 'expected')];
  if ('failed' in loaded) return [line(` ${loaded.failed.message}`, 'late')];
  return tree(loaded.value, view.glyphs, room.columns - 2).map(one => [piece(' '), ...one]);
}

function sampleOf({code}: Specimen, view: View): string | undefined {
  return deskWith(code, view).state.specimens.get(code)?.sample;
}
