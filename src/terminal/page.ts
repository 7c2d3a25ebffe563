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
  readonly kind: 'good' | 'refused' | 'busy';
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
    ...sized(page.body, body),
    ...rule,
    ...sized(cutShort(page.detail, detail, more), detail),
    ...(view.asking === undefined
      ? [saidLine(said), ...sized(keyLines(keys, columns, layout.keys, more), layout.keys)]
      : [askingLine(view.asking, view.glyphs), ...sized([saidLine(said), HOW_TO_ANSWER], layout.keys)]),
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

function saidLine(said: Said | undefined): Line {
  if (said === undefined) return [];
  const kind = said.kind === 'refused' ? 'late' : said.kind === 'good' ? 'good' : 'expected';
  return [piece(` ${said.text}`, kind)];
}
