// What the operating system says about a file, in words a person can act on.
import {Refusal} from '../records/refusal.ts';

const KNOWN: Readonly<Record<string, readonly [what: string, mend: string]>> = {
  EACCES: ['there is no permission', 'Ask its owner for access, or name another room with --room.'],
  EPERM: ['there is no permission', 'Ask its owner for access, or name another room with --room.'],
  EROFS: ['the disk can only be read', 'Make it writable, or copy the room to another disk.'],
  ENOSPC: ['the disk is full', 'Make space and try again; nothing was changed.'],
  EDQUOT: ['your share of the disk is used up', 'Make space and try again; nothing was changed.'],
  EFBIG: ['the file would be too large for this disk', 'Move the room to another disk; nothing was changed.'],
  EISDIR: ['a folder stands where a file belongs', 'Move it elsewhere and try again.'],
  ENOTDIR: ['a file stands where a folder belongs', 'Move it elsewhere and try again.'],
  ENOENT: ['it is missing', 'Run teneral verify to see what the room lacks, teneral restore to go back.'],
  EIO: ['the disk reports an error', 'Check the disk; teneral restore goes back to the newest sound copy.'],
  EMFILE: ['too many files are open', 'Close other programs and try again.'],
};

/** The operating system's code of an error, such as ENOENT. */
export function codeOf(error: unknown): string | undefined {
  return error instanceof Error && 'code' in error && typeof error.code === 'string' ? error.code : undefined;
}

/**
 * A refusal for an error of the disk; any other error is given back as it is.
 * @param path the file or folder concerned
 */
export function diskRefusal(error: unknown, path: string): unknown {
  const code = codeOf(error);
  if (error instanceof Refusal || code === undefined || !code.startsWith('E')) return error;
  const [what, mend] = KNOWN[code] ?? [`the system says ${code}`, 'Mend that and try again.'];
  return new Refusal(what, path, mend);
}
