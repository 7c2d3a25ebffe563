// The commands that write one record each share this: read the words, record, say what was written.
import type {Command as Commander} from 'commander';
import {lineOf} from '../work/daybook.ts';
import {record} from '../work/record.ts';
import {type Command, examples, type Options} from './command.ts';

interface RecordCommand {
  /** What the record is about, as commander arguments: ['<lot>', 'the lot']. */
  readonly arguments: readonly (readonly [flags: string, description: string])[];
  /** False for a record that has no `at` of its own. */
  readonly dated?: false;
  /** Adds the options of its own. `--key` is there already, and `--at` where the record is dated. */
  options?(command: Commander): unknown;
  readonly examples: readonly string[];
  /** The record as JSON would hold it, fields that were not given undefined. `now` is the instant of the request. */
  record(args: readonly string[], options: Options, now: string): Readonly<Record<string, unknown>>;
}

export function recordCommand(spec: RecordCommand): Command {
  return {
    declare(command) {
      for (const [flags, description] of spec.arguments) command.argument(flags, description);
      spec.options?.(command);
      if (spec.dated !== false) command.option('--at <instant>', 'when it happened (default: now)');
      command.option('--key <text>', 'applied once only, however often it is sent');
      examples(command, ...spec.examples);
    },
    async run(invocation, args, options) {
      const draft = given({
        ...spec.record(args, options, invocation.now ?? new Date().toISOString()),
        at: options.at,
        key: options.key,
      });
      const {applied, written, desk} = await record(invocation, [draft]);
      invocation.answer(applied, () =>
        written.length === 0
          ? 'recorded before under this key; nothing was added'
          : written.map(entry => lineOf(entry, desk)).join('\n'),
      );
    },
  };
}

/** The fields that have a value. */
function given(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
