// A command with its options as commander reads them, without starting a process.
import {Command as Commander} from 'commander';
import type {Command} from '../../src/commands/command.ts';

export interface Answered<Answer> {
  readonly answer: Answer;
  readonly text: string;
  readonly warnings: readonly string[];
  /** False where it answered that something is wrong. */
  readonly sound: boolean;
}

export async function run<Answer>(
  command: Command,
  args: readonly string[],
  {dir = 'no-room', columns = 80}: {readonly dir?: string; readonly columns?: number} = {},
): Promise<Answered<Answer>> {
  const declared = new Commander('command').exitOverride().configureOutput({writeErr: () => {}});
  command.declare(declared);
  declared.parse(args, {from: 'user'});
  const said: {readonly answer: Answer; readonly text: string}[] = [];
  const warnings: string[] = [];
  const ended = await command.run(
    {
      dir,
      by: 'A. Keeper',
      json: false,
      columns,
      warn: line => warnings.push(line),
      answer: (value, text) => said.push({answer: value as Answer, text: text()}),
    },
    declared.args,
    declared.opts(),
  );
  return {...said[0]!, warnings, sound: ended !== false};
}
