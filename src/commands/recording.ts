// The commands that write one record each share this: read the words, record, say what was written.
import type {Command as Commander} from 'commander';
import {civil as civilOf} from '../exchange/civil.ts';
import type {Civil} from '../records/civil.ts';
import {fold} from '../records/fold.ts';
import type {RoomState} from '../records/state.ts';
import type {Room} from '../room/room.ts';
import {lineOf} from '../work/daybook.ts';
import {nowOf} from '../work/desk.ts';
import {hintsAfter} from '../work/hints.ts';
import {unlessUnsuited} from '../work/lodging-asked.ts';
import {type Recorded, record} from '../work/record.ts';
import {type Command, examples, type Invocation, type Options} from './command.ts';

interface RecordCommand {
  /** What the record is about, as commander arguments: ['<lot>', 'the lot']. */
  readonly arguments: readonly (readonly [flags: string, description: string])[];
  /** False for a record that has no `at` of its own. */
  readonly dated?: false;
  /** True for what may happen to one animal that is followed by itself. */
  readonly animal?: true;
  /** Adds the options of its own. `--key` is there already, and `--at` where the record is dated. */
  options?(command: Commander): unknown;
  readonly examples: readonly string[];
  /** The record as JSON would hold it, fields that were not given undefined. `now` is the instant of the request. */
  record(args: readonly string[], options: Options, now: string): Fields;
  /** What a person has to answer before it is written. @throws Refusal saying what */
  asks?(record: Fields, state: RoomState, civil: Civil): void;
  /** True for what puts animals into a unit: asked about where the unit would harm them. */
  readonly lodges?: true;
  /** Records written down with it, in the same request. */
  also?(args: readonly string[], options: Options): readonly Fields[];
}

type Fields = Readonly<Record<string, unknown>>;

export function recordCommand(spec: RecordCommand): Command {
  return {
    declare(command) {
      for (const [flags, description] of spec.arguments) command.argument(flags, description);
      spec.options?.(command);
      if (spec.dated !== false) command.option('--at <instant>', 'when it happened (default: now)');
      if (spec.animal === true) command.option('--animal <number>', 'one animal that is followed by itself');
      command
        .option('--key <text>', 'applied once only, however often it is sent')
        .option('--sure', 'write it down although it is unusual');
      examples(command, ...spec.examples);
    },
    async run(invocation, args, options) {
      const {at, key, sure, animal} = options;
      const draft = given({
        ...spec.record(args, options, invocation.now ?? new Date().toISOString()),
        ...{at, key, sure, animal},
      });
      const others = (spec.also?.(args, options) ?? []).map(fields => given({...fields, at, sure}));
      const {asks} = spec;
      const unless =
        asks === undefined
          ? spec.lodges && unlessUnsuited(invocation, [draft])
          : (room: Room) => {
              const civil = civilOf(room.zone);
              asks(draft, fold(room.entries, nowOf(invocation, civil)), civil);
            };
      await answerWritten(invocation, await record(invocation, [draft, ...others], undefined, unless));
    },
  };
}

/** Say what was written down, and what a person should know of it. */
export async function answerWritten(
  invocation: Invocation,
  {applied, written, desk}: Recorded,
): Promise<void> {
  const hints = await hintsAfter(written, desk);
  invocation.answer({...applied, hints}, () =>
    written.length === 0
      ? 'recorded before under this key; nothing was added'
      : [...written.map(entry => lineOf(entry, desk)), ...hints.map(hint => `  ${hint}`)].join('\n'),
  );
}

/** The fields that have a value. */
export function given(fields: Fields): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
