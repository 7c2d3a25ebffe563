// What a command of the command line is, and what it is given.
import type {Command as Commander} from 'commander';
import type {Session} from '../work/session.ts';

/** How a command answers. */
export interface Invocation extends Session {
  readonly json: boolean;
  /** Columns that output may fill. */
  readonly columns: number;
  /** Write the answer: its JSON under --json, else its text. `text` is only called when it is needed. */
  answer(value: unknown, text: () => string): void;
}

export type Options = Readonly<Record<string, unknown>>;

/** One command: its arguments and options, and what it does. It reads flags, asks work/, and says the answer. */
export interface Command {
  /** Declares arguments, options and examples on a commander command that already has name and summary. */
  declare(command: Commander): void;
  /**
   * @returns false where it answered, but the answer is that something is wrong: then the exit status is 1
   * @throws Refusal when the request cannot be granted
   */
  run(invocation: Invocation, args: readonly string[], options: Options): Promise<unknown>;
}

/** The help lines that show real uses of a command. */
export function examples(command: Commander, ...lines: readonly string[]): void {
  command.addHelpText('after', `\nExamples:\n${lines.map(line => `  $ teneral ${line}\n`).join('')}`);
}

/** A text option, undefined where it was not given. */
export function textOption(options: Options, name: string): string | undefined {
  const value = options[name];
  return typeof value === 'string' ? value : undefined;
}

/** A number option, undefined where it was not given. */
export function numberOption(options: Options, name: string): number | undefined {
  const value = options[name];
  return typeof value === 'number' ? value : undefined;
}

/** The words of an option that may be given several times. */
export function listOption(options: Options, name: string): readonly string[] {
  const words = options[name];
  return Array.isArray(words) ? words.filter(word => typeof word === 'string') : [];
}
