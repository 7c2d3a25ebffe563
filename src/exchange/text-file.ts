// A text file that a person names, read whole.
import {Refusal} from '../records/refusal.ts';
import {chunksOf} from './logger-file/chunks.ts';

/** @throws Refusal where the file cannot be read, or is no UTF-8 text */
export function textIn(path: string): string {
  const bytes = Buffer.concat([...chunksOf(path)]);
  try {
    return new TextDecoder('utf-8', {fatal: true}).decode(bytes);
  } catch {
    throw new Refusal('the file is no text', path, 'Give a text file, encoded as UTF-8.');
  }
}
