// Content lines of iCalendar: text escaped, lines folded at 75 octets. RFC 5545, sections 3.1 and 3.3.11.

const MOST_OCTETS = 75;
const LINE_BREAK = '\r\n';

/** A value of type TEXT. A line break of any kind becomes \n; other control characters have no place in a text. */
export function escaped(text: string): string {
  return text
    .replaceAll('\\', '\\\\')
    .replaceAll(';', '\\;')
    .replaceAll(',', '\\,')
    .replaceAll(/\r\n|\r|\n/g, '\\n')
    .replaceAll('\t', ' ')
    .replaceAll(/\p{Cc}/gu, '');
}

export function unescaped(text: string): string {
  return text.replaceAll(/\\([\\;,nN])/g, (_, letter: string) =>
    letter === 'n' || letter === 'N' ? '\n' : letter,
  );
}

/** A line in pieces of at most 75 octets, each after the first behind a blank; no character is cut in two. */
export function folded(line: string): string {
  const pieces: string[] = [];
  let piece = '';
  let octets = 0;
  for (const character of line) {
    const size = Buffer.byteLength(character);
    if (octets + size > MOST_OCTETS) {
      pieces.push(piece);
      piece = ' ';
      octets = 1;
    }
    piece += character;
    octets += size;
  }
  return [...pieces, piece].join(LINE_BREAK);
}

/** The lines of a file, ended as the standard asks. */
export function contentLines(lines: readonly string[]): string {
  return lines.map(line => folded(line) + LINE_BREAK).join('');
}

/** Lines as they were before folding. */
export function unfolded(text: string): string[] {
  return text
    .replaceAll(/\r?\n[ \t]/g, '')
    .split(/\r?\n/)
    .filter(line => line !== '');
}
