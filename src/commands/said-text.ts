// What is said under a title, with names in the margin.
import {wrap} from '../exchange/pictures/fit.ts';
import type {SaidLines} from '../work/said-lines.ts';

const MARGIN = 13;

export function saidText({title, lines}: SaidLines, columns: number): string {
  return [title, ...lines.flatMap(line => marginLines(line, columns))].join('\n');
}

/** A name in the margin, its text wrapped beside it. */
export function marginLines([name, text]: readonly [name: string, text: string], columns: number): string[] {
  if (name === '' && text === '') return [''];
  return wrap(text, columns - MARGIN).map(
    (line, i) => `  ${(i === 0 ? name : '').padEnd(MARGIN - 3)} ${line}`,
  );
}
