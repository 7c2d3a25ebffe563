// Lines of text whose pieces say what they are, so that whoever shows them can add weight or colour.

/**
 * What a piece is. `seen` was observed, `plain` is computed or said, `expected` is to come, `emergence` is the
 * shading of adults to come, `mark` is a sign such as now or a closed day. Every kind can be told from the words
 * or shapes alone.
 */
export type Kind =
  | 'plain'
  | 'heading'
  | 'seen'
  | 'expected'
  | 'emergence'
  | 'mark'
  | 'late'
  | 'good'
  | 'cursor';

export interface Piece {
  readonly text: string;
  readonly kind: Kind;
}

export type Line = readonly Piece[];

export function piece(text: string, kind: Kind = 'plain'): Piece {
  return {text, kind};
}

/** One piece as a line. */
export function line(text: string, kind: Kind = 'plain'): Line {
  return text === '' ? [] : [{text, kind}];
}

/** Single characters with their kinds as a line, neighbours of one kind joined. */
export function joinCells(cells: readonly Piece[]): Line {
  const joined: Piece[] = [];
  for (const {text, kind} of cells) {
    const last = joined.at(-1);
    if (last !== undefined && last.kind === kind) joined[joined.length - 1] = {text: last.text + text, kind};
    else joined.push({text, kind});
  }
  return joined;
}

/** The text alone, blanks at the end dropped. */
export function textOf(line: Line): string {
  return line
    .map(({text}) => text)
    .join('')
    .trimEnd();
}

/** Lines as one text. */
export function textOfLines(lines: readonly Line[]): string {
  return lines.map(textOf).join('\n');
}
