// A page: head, rule, body, rule, detail, what was just said, keys. The same frame around every sheet.
import {cut, cutLine, fill, widthOf, wrap} from '../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../exchange/pictures/line.ts';
import {askingLine} from './ask/asking-line.ts';
import {bottomLines, type Named} from './bindings.ts';
import type {Layout} from './layout.ts';
import type {Page, View} from './sheet.ts';

export interface Said {
  readonly text: string;
  /** `refused` stays until the next key. */
  readonly kind: 'good' | 'refused';
}

/** At least so much of the head shows beside a long aside. */
const HEAD_COLUMNS = 24;

/** Every line of the window, exactly as many as the layout has. */
export function pageLines(
  page: Page,
  layout: Extract<Layout, {kind: 'page'}>,
  view: View,
  said: Said | undefined,
  keys: readonly Named[],
): Line[] {
  const {columns, body, detail} = layout;
  const {more} = view.glyphs;
  const rule = view.plain ? [] : [line(view.glyphs.rule.repeat(columns), 'mark')];
  const aside = cut(page.aside, columns - HEAD_COLUMNS, more);
  const head = `${fill(` ${page.head}`, columns - aside.length - 2, more)} ${aside}`;
  const lines: Line[] = [
    line(head, 'heading'),
    ...rule,
    ...(page.detail === undefined
      ? [...sized(page.body, body + detail), ...rule]
      : [...sized(page.body, body), ...rule, ...sized(cutShort(page.detail, detail, more), detail)]),
    ...footLines(view, said, keys, columns, 1 + layout.keys),
  ];
  const shown = view.plain ? lines.filter(one => widthOf(one) > 0) : lines;
  return sized(
    shown.map(one => cutLine(one, columns, more)),
    layout.height,
  );
}

/** A window too small for pages: what size they need, and the list of tasks as plain text. */
export function smallLines(tasks: readonly string[], layout: Layout, need: string): Line[] {
  const {columns, height} = layout;
  return [...wrap(need, columns), ...tasks].slice(0, height).map(text => line(cut(text, columns)));
}

const HOW_TO_CHOOSE = line(' one key an answer   escape leaves the question open', 'expected');
const HOW_TO_ANSWER = line(' enter keeps a text or number   delete takes back   escape leaves', 'expected');

function keyLines(keys: readonly Named[], columns: number, count: number, more: string): Line[] {
  return bottomLines(keys, columns - 2, count, more).map(text => line(` ${text}`, 'expected'));
}

/** As many lines as there is room for; the last one tells where more follow. */
function cutShort(lines: readonly Line[], count: number, more: string): readonly Line[] {
  if (lines.length <= count) return lines;
  return [...lines.slice(0, count - 1), [...lines[count - 1]!, piece(` ${more}`, 'mark')]];
}

function sized(lines: readonly Line[], count: number): Line[] {
  return Array.from({length: count}, (_, i) => lines[i] ?? []);
}

/** The question or what was just said, as long as it takes, then keys in the room that is left. */
function footLines(
  {asking, glyphs}: View,
  said: Said | undefined,
  keys: readonly Named[],
  columns: number,
  count: number,
): Line[] {
  const above = asking === undefined ? [] : [askingLine(asking, glyphs)];
  const told = said === undefined ? [] : saidLines(said, columns - 2).slice(0, count - above.length);
  const blank: Line[] = above.length + told.length === 0 ? [[]] : [];
  const left = count - above.length - told.length - blank.length;
  const below =
    asking === undefined
      ? keyLines(keys, columns, left, glyphs.more)
      : [asking.kind === 'choice' ? HOW_TO_CHOOSE : HOW_TO_ANSWER];
  return sized([...above, ...told, ...blank, ...(left > 0 ? below : [])], count);
}

function saidLines({text, kind}: Said, columns: number): Line[] {
  return wrap(text, columns).map(part => line(` ${part}`, kind === 'refused' ? 'late' : 'good'));
}
