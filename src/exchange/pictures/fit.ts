// Text and lines cut or filled to a number of cells.
import fastStringWidth from 'fast-string-width';
import {type Line, type Piece, piece} from './line.ts';

/** The text, or as much of it as fits with a sign that more follows. */
export function cut(text: string, width: number, more = '…'): string {
  if (stringWidth(text) <= width) return text;
  let kept = '';
  for (const letter of text) {
    if (stringWidth(kept + letter + more) > width) break;
    kept += letter;
  }
  return width < stringWidth(more) ? kept : kept + more;
}

/** The text cut to the width, blanks filling what is left. */
export function fill(text: string, width: number, more?: string): string {
  const shown = cut(text, width, more);
  return shown + ' '.repeat(Math.max(0, width - stringWidth(shown)));
}

export function widthOf(line: Line): number {
  return line.reduce((sum, {text}) => sum + stringWidth(text), 0);
}

/** The line cut to the width. */
export function cutLine(line: Line, width: number, more?: string): Line {
  if (widthOf(line) <= width) return line;
  const kept: Piece[] = [];
  let left = width;
  for (const one of line) {
    const wide = stringWidth(one.text);
    if (wide <= left && one !== line.at(-1)) kept.push(one);
    else kept.push(piece(cut(one.text, left, wide > left ? more : ''), one.kind));
    left -= wide;
    if (left <= 0) break;
  }
  return kept.filter(({text}) => text !== '');
}

/** Text broken at blanks into lines of at most this width. */
export function wrap(text: string, width: number): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of text.split(/\s+/).filter(word => word !== '')) {
    const longer = now === '' ? word : `${now} ${word}`;
    if (stringWidth(longer) <= width) now = longer;
    else {
      if (now !== '') lines.push(now);
      now = cut(word, width);
    }
  }
  return now === '' ? lines : [...lines, now];
}

/** In printable ASCII every letter is one cell: most text, told at once. */
function stringWidth(text: string): number {
  return /^[\x20-\x7e]*$/.test(text) ? text.length : fastStringWidth(text);
}
