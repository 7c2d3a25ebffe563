// A page: head, rule, body, rule, detail, what was just said, keys. The same frame around every sheet.
import {cut, cutLine, fill, widthOf} from '../exchange/pictures/fit.ts';
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
  const aside = cut(page.aside, Math.floor(columns / 2), more);
  const head = fill(` ${page.head}`, columns - aside.length - 1, more) + aside;
  const lines: Line[] = [
    line(head, 'heading'),
    ...rule,
    ...sized(page.body, body),
    ...rule,
    ...sized(page.detail, detail),
    view.asking === undefined ? saidLine(said) : askingLine(view.asking, view.glyphs),
    ...sized(
      bottomLines(keys, columns - 2, layout.keys, more).map(text => line(` ${text}`, 'expected')),
      layout.keys,
    ),
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
  return [need, ...tasks].slice(0, height).map(text => line(cut(text, columns)));
}

function sized(lines: readonly Line[], count: number): Line[] {
  return Array.from({length: count}, (_, i) => lines[i] ?? []);
}

function saidLine(said: Said | undefined): Line {
  if (said === undefined) return [];
  const kind = said.kind === 'refused' ? 'late' : said.kind === 'good' ? 'good' : 'expected';
  return [piece(` ${said.text}`, kind)];
}
