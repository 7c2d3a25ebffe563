// A command by its name and one line; its file is loaded only when it is asked for.
import type {Command} from './command.ts';

export interface CommandEntry {
  readonly name: string;
  readonly summary: string;
  readonly group: string;
  readonly load: () => Promise<{readonly command: Command}>;
}

/** What is asked for most. It stands alone too: see start-today.ts. */
export const todayEntry = {
  name: 'today',
  summary: 'what is to be done today, in walking order',
  group: 'Every day:',
  load: () => import('./today.ts'),
} satisfies CommandEntry;
