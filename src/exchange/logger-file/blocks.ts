// A stream of bytes cut into pieces that end with a line.
import {Refusal} from '../../records/refusal.ts';

const LF = 10;
const HEAD_SIZE = 1 << 18;
/** A longer line is no row of a table. */
const LONGEST_LINE = 1 << 20;

/** The first part of a stream, and whether it is all of it. */
export interface Head {
  readonly bytes: Uint8Array;
  readonly whole: boolean;
}

export function headOf(chunks: Iterable<Uint8Array>): Head {
  const taken: Uint8Array[] = [];
  let size = 0;
  for (const chunk of chunks) {
    taken.push(chunk);
    size += chunk.length;
    if (size >= HEAD_SIZE) return {bytes: Buffer.concat(taken), whole: false};
  }
  return {bytes: Buffer.concat(taken), whole: true};
}

/** The whole lines of a head, the last one ended. */
export function wholeLines({bytes, whole}: Head): Uint8Array {
  return whole ? ended(bytes) : bytes.subarray(0, bytes.lastIndexOf(LF) + 1);
}

/**
 * Hands over block after block, each ending with a line feed. What a block's reader leaves at its end comes again at
 * the beginning of the next one.
 * @param take returns how many bytes it used up, or undefined when it needs no more
 * @throws Refusal where lines do not end
 */
export function eachBlock(
  chunks: Iterable<Uint8Array>,
  file: string,
  take: (block: Uint8Array, final: boolean) => number | undefined,
): void {
  let left: Uint8Array = new Uint8Array(0);
  for (const chunk of chunks) {
    const bytes = left.length === 0 ? chunk : Buffer.concat([left, chunk]);
    const end = bytes.lastIndexOf(LF) + 1;
    const used = end === 0 ? 0 : take(bytes.subarray(0, end), false);
    if (used === undefined) return;
    left = bytes.subarray(used);
    if (left.length > LONGEST_LINE && left.indexOf(LF) < 0)
      throw new Refusal(
        'a line does not end within a million characters',
        file,
        'Give a file of text with a row a line.',
      );
  }
  if (left.length > 0) take(ended(left), true);
}

function ended(bytes: Uint8Array): Uint8Array {
  return bytes.length === 0 || bytes.at(-1) === LF ? bytes : Buffer.concat([bytes, Buffer.of(LF)]);
}
