// What a logger said that is hardly true: each hit is masked, or trusted, with a reason.
import {type Line, line} from '../../exchange/pictures/line.ts';
import {instantWords} from '../../exchange/time-words.ts';
import {instantOf} from '../../records/entry.ts';
import type {DoubtRow, DoubtState} from '../../work/logger-readings.ts';
import type {Binding} from '../bindings.ts';
import {scrolled, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';

type Doubts = SheetOf<'doubts'>;
type Key = Binding<Doubts, View, Step<Doubts>>;

const STATES: Readonly<Record<DoubtState, string>> = {
  'set-aside': 'set aside: not in the course',
  look: 'in the course: look at it',
  masked: 'masked by a person: not in the course',
  trusted: 'trusted by a person: in the course',
};

const move = (strokes: readonly string[], short: string, by: number): Key => ({
  strokes,
  short,
  says: by > 0 ? 'the next one' : 'the one before',
  act: (sheet, view) => ({
    sheet: {...sheet, cursor: Math.max(0, Math.min(rowsOf(sheet, view).length - 1, sheet.cursor + by))},
  }),
});

const judge = (stroke: string, short: string, says: string, lift: boolean): Key => ({
  strokes: [stroke],
  short,
  says,
  hint: true,
  disabled: (sheet, view) => (hit(sheet, view) === undefined ? 'nothing is doubted' : undefined),
  act: (sheet, view) => {
    const {from, to} = hit(sheet, view)!;
    const {logger} = sheet;
    const label = lift ? 'why it is to be trusted' : 'why it is not to be trusted';
    return {ask: {kind: 'text', label, text: '', purpose: {for: 'mask', logger, from, to, lift}}};
  },
});

const keys: readonly Key[] = [
  judge('m', 'mask', 'leave these readings out of the course, and say why', false),
  judge('t', 'trust', 'keep these readings in the course, and say why', true),
  move(['down', 'j'], 'next', 1),
  move(['up', 'k'], 'before', -1),
];

export const doubts: SheetPart<Doubts> = {
  title: 'doubtful readings',
  keys,
  draw: drawDoubts,
  needs: ({logger}, view) => (view.doubts.has(logger) ? [] : [{do: 'doubts', logger}]),
};

function drawDoubts(sheet: Doubts, view: View, room: Room): Page {
  const {logger, cursor} = sheet;
  const loaded = view.doubts.get(logger);
  const rows = rowsOf(sheet, view);
  const lines = linesOf(loaded, rows, sheet, view);
  const scroll = Math.max(0, cursor - room.body + 2);
  return {
    head: `${logger} ${view.glyphs.dot} doubtful readings of two months`,
    aside: whereScrolled(lines.length, scroll, room.body) || `${rows.length} in all`,
    body: scrolled(lines, scroll, room.body),
    detail: detailOf(hit(sheet, view), view),
  };
}

function linesOf(
  loaded: View['doubts'] extends ReadonlyMap<string, infer Value> ? Value | undefined : never,
  rows: readonly DoubtRow[],
  {logger, cursor}: Doubts,
  view: View,
): Line[] {
  if (loaded === undefined) return [line(' The readings are being looked through …', 'expected')];
  if ('failed' in loaded) return [line(` ${loaded.failed.message}`, 'late')];
  if (rows.length === 0) return [line(' Nothing that it said is doubted.')];
  const {civil, now} = view.facts.desk;
  return rows.map(({rule, from, state}, i) => {
    const mark = i === cursor ? view.glyphs.cursor : ' ';
    const lately = view.lately.get(`${logger} ${from}`) ?? STATES[state];
    const when = instantWords(instantOf(from), civil, now);
    return line(
      ` ${mark} ${when.padEnd(20)} ${rule.padEnd(13)} ${lately}`,
      state === 'look' ? 'late' : 'plain',
    );
  });
}

function detailOf(row: DoubtRow | undefined, {facts: {desk}}: View): Line[] {
  if (row === undefined) return [];
  const when = (iso: string) => instantWords(instantOf(iso), desk.civil, desk.now);
  return [
    line(` ${row.rule}: ${row.what}`),
    line(
      row.readings === 1
        ? ` one reading, ${when(row.from)}`
        : ` ${row.readings} readings, ${when(row.from)} to ${when(row.to)}`,
    ),
    line(` ${STATES[row.state]}`),
  ];
}

function rowsOf({logger}: Doubts, {doubts}: View): readonly DoubtRow[] {
  const loaded = doubts.get(logger);
  return loaded !== undefined && 'value' in loaded ? loaded.value : [];
}

function hit(sheet: Doubts, view: View): DoubtRow | undefined {
  return rowsOf(sheet, view)[sheet.cursor];
}
