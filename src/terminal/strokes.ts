// Keys as the screens know them. A fast hand or a paste arrives as one text; every character of it is a stroke.
import type {Key} from 'ink';

/** A character, or the name of a key: `up`, `enter`, `escape` … */
export type Stroke = string;

const NAMED: readonly (readonly [keyof Key, Stroke])[] = [
  ['upArrow', 'up'],
  ['downArrow', 'down'],
  ['leftArrow', 'left'],
  ['rightArrow', 'right'],
  ['pageUp', 'page-up'],
  ['pageDown', 'page-down'],
  ['home', 'home'],
  ['end', 'end'],
  ['escape', 'escape'],
  ['return', 'enter'],
  ['backspace', 'delete'],
  // Backspace and Delete cannot be told apart here: both take away what stands before the cursor.
  ['delete', 'delete'],
];

const CHARACTERS: Readonly<Record<string, Stroke>> = {
  '\r': 'enter',
  '\n': 'enter',
  '\t': 'tab',
  '\b': 'delete',
  '\u007f': 'delete',
  '\u0003': 'ctrl-c',
  '\u001b': 'escape',
};

/** The strokes of one event of the keyboard, in order. */
export function strokesOf(input: string, key: Partial<Key>): Stroke[] {
  if (key.tab === true) return [key.shift === true ? 'back-tab' : 'tab'];
  const named = NAMED.find(([flag]) => key[flag] === true);
  if (named !== undefined) return [named[1]];
  if (key.ctrl === true) return input === 'c' ? ['ctrl-c'] : [];
  if (key.meta === true) return [];
  return [...input].map(letter => CHARACTERS[letter] ?? letter);
}

/** Is it a character that can stand in a text? */
export function isCharacter(stroke: Stroke): boolean {
  return [...stroke].length === 1 && stroke >= ' ';
}

/** A stroke as the bottom line names it. */
export function nameOf(stroke: Stroke): string {
  return stroke === ' ' ? 'space' : stroke;
}
