// JSON that a person wrote, in a file or on the command line.
import {Refusal} from '../records/refusal.ts';

/**
 * @param where how to name the text to a person
 * @param mend what it should be
 * @throws Refusal where the text is not JSON
 */
export function jsonIn(text: string, where: string, mend: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    throw new Refusal(`this is not JSON (${why})`, where, mend);
  }
}
