// The keys that move a cursor through a list of things.
import type {Binding} from './bindings.ts';
import type {Sheet, Step, View} from './sheet.ts';

/**
 * Up, down, and ten at once.
 * @param thing what a line of the list holds: "lot", "rule"
 */
export function cursorKeys<Own extends Sheet>(
  thing: string,
  moved: (sheet: Own, view: View, by: number) => Step<Own>,
): Binding<Own, View, Step<Own>>[] {
  const by = (lines: number) => (sheet: Own, view: View) => moved(sheet, view, lines);
  return [
    {strokes: ['up', 'k'], short: 'up', says: `the ${thing} above`, act: by(-1)},
    {strokes: ['down', 'j'], short: 'down', says: `the ${thing} below`, act: by(1)},
    {strokes: ['page-up'], short: 'page up', says: `ten ${thing}s up`, act: by(-10)},
    {strokes: ['page-down'], short: 'page down', says: `ten ${thing}s down`, act: by(10)},
  ];
}
