/**
 * A request that cannot be granted as it stands: bad data, a broken balance, a damaged room. It tells a person
 * what was wrong, where, and what to do. Every layer throws it; only the outermost one prints it.
 */
export class Refusal extends Error {
  override readonly name = 'Refusal';
  /** What is wrong, in the present tense, without a full stop. */
  readonly what: string;
  /** File, row, record, field and value, as far as known. */
  readonly where: string;
  /** What to do about it. */
  readonly mend: string;

  constructor(what: string, where: string, mend: string) {
    super(`${where === '' ? '' : `${where}: `}${faultInWords({what, mend})}`);
    this.what = what;
    this.where = where;
    this.mend = mend;
  }
}

/** What is wrong and what to do about it; a question keeps its mark. */
export function faultInWords({what, mend}: {readonly what: string; readonly mend: string}): string {
  return `${what}${what.endsWith('?') ? '' : '.'} ${mend}`;
}
