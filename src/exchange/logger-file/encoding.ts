// From the bytes of a text file to bytes in which ASCII stands for itself and lines end with a line feed.
import {Refusal} from '../../records/refusal.ts';

export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'latin1';

const LF = 10;
const CR = 13;
/** Also tabs, and the mark by which old systems end a file. */
const ALLOWED = [9, LF, CR, 26];
/** Where text is taken for none: more control characters than a stray few. */
const CONTROL_SHARE = 0.02;
const LOOKED_AT = 1 << 16;

/**
 * The encoding, from a file's first bytes: its byte order mark, else the pattern of zero bytes, else whether it is
 * valid UTF-8.
 * @throws Refusal where the bytes are no text
 */
export function encodingOf(head: Uint8Array, file: string): Encoding {
  const [first, second] = head;
  if (first === 0xff && second === 0xfe) return 'utf-16le';
  if (first === 0xfe && second === 0xff) return 'utf-16be';
  const start = head.subarray(0, LOOKED_AT);
  const zeros = [0, 1].map(parity => start.filter((byte, i) => byte === 0 && i % 2 === parity).length);
  const most = start.length * 0.3;
  if (zeros[1]! > most && zeros[0] === 0) return 'utf-16le';
  if (zeros[0]! > most && zeros[1] === 0) return 'utf-16be';
  const controls = start.filter(byte => byte < 32 && !ALLOWED.includes(byte)).length;
  if (zeros[0]! + zeros[1]! > 0 || controls > start.length * CONTROL_SHARE)
    throw new Refusal(
      'the file is no text',
      file,
      'Export the readings from the logger as CSV and give that file.',
    );
  return isUtf8(head) ? 'utf-8' : 'latin1';
}

/** The chunks without byte order mark, UTF-16 as UTF-8, a lone carriage return as a line feed where they end lines. */
export function* plainChunks(chunks: Iterable<Uint8Array>, encoding: Encoding, head: Uint8Array) {
  const utf16 = encoding === 'utf-16le' || encoding === 'utf-16be' ? new TextDecoder(encoding) : undefined;
  const returnsEndLines = !head.includes(LF) && head.includes(CR);
  let markLeft = startsWithMark(head) ? 3 : 0;
  for (const chunk of chunks) {
    // The decoder of UTF-16 passes over its own mark.
    const text =
      utf16 === undefined ? chunk.subarray(markLeft) : Buffer.from(utf16.decode(chunk, {stream: true}));
    markLeft = Math.max(0, markLeft - chunk.length);
    yield returnsEndLines ? text.map(byte => (byte === CR ? LF : byte)) : text;
  }
}

/** Text of bytes that plainChunks gave. */
export function decoderOf(encoding: Encoding): (bytes: Uint8Array) => string {
  const name = encoding === 'latin1' ? encoding : 'utf8';
  return bytes => Buffer.from(bytes.buffer, bytes.byteOffset, bytes.length).toString(name);
}

function startsWithMark([first, second, third]: Uint8Array): boolean {
  return first === 0xef && second === 0xbb && third === 0xbf;
}

/** The head may end inside a character. */
function isUtf8(head: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', {fatal: true}).decode(head, {stream: true});
    return true;
  } catch {
    return false;
  }
}
