// Stages as single signs, so that a lot's development reads as a line of text.
import type {Stage} from '../../records/stage.ts';

const LETTERS: Readonly<Record<string, string>> = {
  egg: 'e',
  larva: 'l',
  nymph: 'n',
  prepupa: 'q',
  pupa: 'p',
  subimago: 's',
  adult: ' ',
};

/** `e` egg, 1–9 then A–Z the instar, `l` or `n` where instars are not told apart, `q` prepupa, `p` pupa, `s` subimago. */
export function stageLetter(stage: Stage): string {
  const instar = /^(?:larva|nymph)-(\d+)$/.exec(stage)?.[1];
  if (instar === undefined) return LETTERS[stage] ?? '?';
  return Number(instar).toString(36).toUpperCase();
}
