// A file's bytes, piece by piece, and what a person is told when they cannot be had.
import {createHash} from 'node:crypto';
import {closeSync, fstatSync, openSync, readSync} from 'node:fs';
import {Refusal} from '../../records/refusal.ts';

const CHUNK = 1 << 20;

const reasons: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  ENOENT: ['there is no such file', 'Check the name and the folder.'],
  EISDIR: ['this is a folder, not a file', 'Name the file in it.'],
  ENOTDIR: ['there is no such file', 'Check the name and the folder.'],
  EACCES: ['you are not allowed to read this file', 'Ask for permission, or copy it to a folder of yours.'],
  EPERM: ['you are not allowed to read this file', 'Ask for permission, or copy it to a folder of yours.'],
};

/**
 * The bytes of a file; it can be gone through more than once.
 * @param passed told after every piece what share of the file has been gone through
 * @throws Refusal where it cannot be read
 */
export function chunksOf(path: string, passed?: (share: number) => void): Iterable<Uint8Array> {
  return {
    *[Symbol.iterator]() {
      const file = readable(path, () => openSync(path, 'r'));
      const whole = passed === undefined ? 0 : readable(path, () => fstatSync(file).size);
      let done = 0;
      try {
        for (;;) {
          const chunk = Buffer.allocUnsafe(CHUNK);
          const size = readable(path, () => readSync(file, chunk, 0, CHUNK, null));
          if (size === 0) return;
          yield chunk.subarray(0, size);
          done += size;
          passed?.(Math.min(1, done / Math.max(1, whole)));
        }
      } finally {
        closeSync(file);
      }
    },
  };
}

/** SHA-256 of a file's bytes, in hexadecimal. @throws Refusal where it cannot be read */
export function sha256Of(path: string): string {
  const hash = createHash('sha256');
  for (const chunk of chunksOf(path)) hash.update(chunk);
  return hash.digest('hex');
}

function readable<Value>(path: string, read: () => Value): Value {
  try {
    return read();
  } catch (error) {
    const code = error instanceof Error && 'code' in error ? String(error.code) : '';
    const [what, mend] = reasons[code] ?? [`the file cannot be read (${code})`, 'Check the disk it lies on.'];
    throw new Refusal(what, path, mend);
  }
}
