// From the global options and the environment to what every command is given.
import {userInfo} from 'node:os';
import type {Invocation} from './command.ts';

export interface GlobalOptions {
  readonly room?: string;
  readonly by?: string;
  readonly now?: string;
  readonly json?: boolean;
}

/** As most terminals open. */
const DEFAULT_COLUMNS = 80;

export function invocationFor({room, by, now, json = false}: GlobalOptions): Invocation {
  return {
    dir: room ?? process.env.TENERAL_ROOM ?? 'room',
    by: by ?? process.env.TENERAL_BY ?? systemUser(),
    now,
    json,
    columns: process.stdout.columns ?? DEFAULT_COLUMNS,
    warn: line => process.stderr.write(`teneral: ${line}\n`),
    answer: (value, text) => {
      process.stdout.write(json ? `${JSON.stringify(value)}\n` : withNewline(text()));
    },
  };
}

/** A system without an entry for the user still lets people work. */
function systemUser(): string {
  try {
    return userInfo().username;
  } catch {
    return 'unknown';
  }
}

function withNewline(text: string): string {
  return text === '' || text.endsWith('\n') ? text : `${text}\n`;
}
