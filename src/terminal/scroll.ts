// Pages longer than the window: the keys that move them, and the lines that show.
import type {Line} from '../exchange/pictures/line.ts';
import type {Binding} from './bindings.ts';
import type {Sheet, Step, View} from './sheet.ts';

type Long = Extract<Sheet, {readonly scroll: number}>;

/** Up, down, a page, the beginning. The end is held where the page is drawn: see shownFrom. */
export function scrollKeys<Own extends Long>(): Binding<Own, View, Step<Own>>[] {
  const by = (lines: number) => (sheet: Own) => ({
    sheet: {...sheet, scroll: Math.max(0, sheet.scroll + lines)},
  });
  return [
    {strokes: ['down', 'j'], short: 'further', says: 'further down', hint: true, act: by(1)},
    {strokes: ['up', 'k'], short: 'up', says: 'further up', act: by(-1)},
    {strokes: ['page-down'], short: 'page down', says: 'a page down', act: by(10)},
    {strokes: ['page-up'], short: 'page up', says: 'a page up', act: by(-10)},
    {
      strokes: ['home', 'g'],
      short: 'top',
      says: 'to the top',
      act: sheet => ({sheet: {...sheet, scroll: 0}}),
    },
  ];
}

/** So many lines from where the page is scrolled to, never beyond its end. */
export function scrolled(lines: readonly Line[], scroll: number, room: number): readonly Line[] {
  const from = Math.max(0, Math.min(scroll, lines.length - room));
  return lines.slice(from, from + room);
}

/** "lines 12 to 30 of 64", empty where all of it shows. */
export function whereScrolled(lines: number, scroll: number, room: number): string {
  if (lines <= room) return '';
  const from = Math.max(0, Math.min(scroll, lines - room));
  return `lines ${from + 1} to ${from + room} of ${lines}`;
}
