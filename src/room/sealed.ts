// A JSON document that carries the checksum of its own content in its first fields, so that one reading tells
// whether it is exactly what this program wrote.
import {createHash} from 'node:crypto';

/** Version of everything written into a room. A newer one is refused, an older one lifted when read. */
export const FORMAT = 1;

const HEAD = `{"format":${FORMAT},"sha256":"`;
const MIDDLE = '","content":';
const TAIL = '}\n';
const CONTENT_FROM = HEAD.length + 64 + MIDDLE.length;

/** The bytes of a document. `sha256` is of the bytes of its content alone. */
export function seal(content: unknown): Buffer {
  const text = JSON.stringify(content);
  return Buffer.from(`${HEAD}${sha256(text)}${MIDDLE}${text}${TAIL}`);
}

/**
 * The content of a document whose bytes are those that `seal` made; undefined for every other one.
 * The checksum stands for the check of the form: only this program writes it.
 */
export function unseal<Content>(bytes: Buffer): Sealed<Content> | undefined {
  const stated = statedChecksum(bytes);
  if (stated === undefined) return undefined;
  const content = bytes.subarray(CONTENT_FROM, bytes.length - TAIL.length);
  if (sha256(content) !== stated) return undefined;
  return {sha256: stated, content: JSON.parse(content.toString()) as Content};
}

export interface Sealed<Content> {
  readonly sha256: string;
  readonly content: Content;
}

/** SHA-256 in hexadecimal. */
export function sha256(bytes: Buffer | string): string {
  return createHash('sha256').update(bytes).digest('hex');
}

function statedChecksum(bytes: Buffer): string | undefined {
  const framed =
    bytes.length > CONTENT_FROM + TAIL.length &&
    bytes.toString('latin1', 0, HEAD.length) === HEAD &&
    bytes.toString('latin1', HEAD.length + 64, CONTENT_FROM) === MIDDLE &&
    bytes.toString('latin1', bytes.length - TAIL.length) === TAIL;
  return framed ? bytes.toString('latin1', HEAD.length, HEAD.length + 64) : undefined;
}
