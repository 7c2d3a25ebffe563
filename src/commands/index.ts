// Every command with its one-line summary, grouped by purpose. A command's file is loaded only when it is asked for.
import type {Command} from './command.ts';

export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  readonly group: string;
  readonly load: () => Promise<{readonly command: Command}>;
}

const ROOM = 'The room:';
const RECORDS = 'Records:';
const QUESTIONS = 'Questions:';
const CALCULATORS = 'Calculators (no room needed):';

export const commands: readonly CommandEntry[] = [
  {name: 'degree-days', summary: 'degree-days of a logger file or of one day’s extremes', group: CALCULATORS, load: () => import('./degree-days.ts')},
];
export {QUESTIONS, RECORDS, ROOM};
