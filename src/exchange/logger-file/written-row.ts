// One row of a delimited file, quotes and all (RFC 4180, read liberally).

export type Delimiter = ',' | ';' | '\t';

export interface WrittenRow {
  /** Trimmed. */
  readonly cells: readonly string[];
  /** Where the next row begins. */
  readonly next: number;
  /** How many lines it takes: quoted cells may hold line breaks. */
  readonly lines: number;
  /** A quote was opened and never closed; the row then ends with its line. */
  readonly unclosed: boolean;
}

const LF = 10;
/** A quote that is not closed by then is a slip, and must not swallow the rest of the file. */
const MOST_LINES = 20;

/**
 * The row that begins at `start`.
 * @param end where the bytes end; the byte before is a line feed
 * @param final nothing comes after `end`
 * @returns undefined where its end may lie beyond `end`
 */
export function rowAt(
  bytes: Uint8Array,
  start: number,
  end: number,
  final: boolean,
  delimiter: Delimiter,
  decode: (bytes: Uint8Array) => string,
): WrittenRow | undefined {
  const firstEnd = bytes.indexOf(LF, start);
  const line = decode(bytes.subarray(start, firstEnd));
  const plain = {next: firstEnd + 1, lines: 1, unclosed: false};
  if (!line.includes('"')) return {...plain, cells: trimmed(line.split(delimiter))};

  let lineEnd = firstEnd;
  for (let lines = 1; lines <= MOST_LINES && lineEnd < end; lines++) {
    const cells = quotedCells(decode(bytes.subarray(start, lineEnd)), delimiter);
    if (cells !== undefined) return {cells, next: lineEnd + 1, lines, unclosed: false};
    if (lineEnd + 1 >= end) {
      if (final) break;
      return undefined;
    }
    lineEnd = bytes.indexOf(LF, lineEnd + 1);
  }
  return {...plain, cells: trimmed(line.split(delimiter)), unclosed: true};
}

function trimmed(cells: readonly string[]): string[] {
  return cells.map(cell => cell.trim());
}

/** Cells of text in which a cell may be quoted; undefined where a quote is not closed before a delimiter or the end. */
function quotedCells(text: string, delimiter: Delimiter): string[] | undefined {
  const cells: string[] = [];
  const isSpace = (at: number) => text[at] !== delimiter && /\s/.test(text[at] ?? '');
  for (let at = 0; ; at++) {
    while (isSpace(at)) at++;
    if (text[at] === '"') {
      let cell = '';
      for (at++; ; at++) {
        const quote = text.indexOf('"', at);
        if (quote < 0) return undefined;
        cell += text.slice(at, quote);
        at = quote + 1;
        if (text[at] !== '"') break;
        cell += '"';
      }
      cells.push(cell.trim());
      while (isSpace(at)) at++;
      if (at < text.length && text[at] !== delimiter) return undefined;
    } else {
      const end = text.indexOf(delimiter, at);
      cells.push(text.slice(at, end < 0 ? undefined : end).trim());
      at = end < 0 ? text.length : end;
    }
    if (at >= text.length) return cells;
  }
}
