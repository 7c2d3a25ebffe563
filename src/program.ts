// Reads the command line, loads the one command it names, and is the only place that prints errors and exits.
import {Command, CommanderError, InvalidArgumentError, Option} from 'commander';
import type {Invocation} from './commands/command.ts';
import type {CommandEntry} from './commands/entry.ts';
import {type GlobalOptions, invocationFor} from './commands/invocation.ts';
import {commandName} from './commands/name.ts';
import {Refusal} from './records/refusal.ts';
import {version} from './version.ts';

const DONE = 0;
const REFUSED = 1;
const WRONG_USAGE = 2;

export interface Offer {
  readonly commands: readonly CommandEntry[];
  /** What is done where no command is named. */
  readonly plain?: (invocation: Invocation) => Promise<void>;
}

/** Do what the command line says. */
export async function run(argv: readonly string[], offer: Offer): Promise<void> {
  // Whoever reads may stop when they have seen enough, as head does.
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    process.exit(DONE);
  });
  process.exitCode = await statusOf(argv, offer);
}

async function statusOf(argv: readonly string[], offer: Offer): Promise<number> {
  const json = argv.includes('--json');
  try {
    let status = DONE;
    const program = await programFor(argv, offer, () => {
      status = REFUSED;
    });
    await program.parseAsync(argv, {from: 'user'});
    return status;
  } catch (error) {
    if (error instanceof CommanderError) return error.exitCode === 0 ? DONE : WRONG_USAGE;
    if (error instanceof Refusal) return refuse(error, json);
    throw error;
  }
}

/**
 * All commands by name and summary; only the one asked for is loaded and knows its options.
 * @param fail called when the command answered that something is wrong
 */
async function programFor(
  argv: readonly string[],
  {commands, plain}: Offer,
  fail: () => void,
): Promise<Command> {
  const program = new Command('teneral')
    .description(
      'Schedules a rearing room and predicts when adults emerge. Without a command, its screens open.',
    )
    .version(version, '--version')
    .helpOption('--help', 'show this help, or that of a command')
    .helpCommand(false)
    .allowExcessArguments()
    .exitOverride();
  withGlobalOptions(program);
  const asked = commandName(argv);
  for (const {name, summary, group, load} of commands) {
    const declared = program.command(name).summary(summary).description(summary).helpGroup(group);
    declared.exitOverride().allowExcessArguments(false).helpOption('--help', 'show this help');
    if (name !== asked) continue;
    withGlobalOptions(declared);
    const {command} = await load();
    command.declare(declared);
    declared.action(async () => {
      const options = declared.optsWithGlobals<GlobalOptions & Record<string, unknown>>();
      try {
        if ((await command.run(invocationFor(options), declared.args, options)) === false) fail();
      } catch (error) {
        if (error instanceof InvalidArgumentError) declared.error(`error: ${error.message}`);
        throw error;
      }
    });
  }
  program.action(async () => {
    if (asked !== undefined)
      program.error(`error: there is no command "${asked}"; teneral --help lists them`);
    await plain?.(invocationFor(program.opts<GlobalOptions>()));
  });
  return program;
}

/** The global options stand before or after the command, so both levels know them. */
function withGlobalOptions(command: Command): void {
  command
    .addOption(new Option('--room <dir>', 'the room’s folder (default: $TENERAL_ROOM, else ./room)'))
    .addOption(new Option('--by <name>', 'who acts (default: $TENERAL_BY, else the system user)'))
    .addOption(new Option('--now <instant>', 'answer as of this instant'))
    .addOption(new Option('--json', 'answer as JSON'));
}

function refuse(refusal: Refusal, json: boolean): number {
  const {what, where, mend, message} = refusal;
  // One line, whatever it quotes.
  process.stderr.write(`teneral: ${message.replace(/\p{Cc}+/gu, ' ')}\n`);
  if (json) process.stdout.write(`${JSON.stringify({error: {what, where, mend}})}\n`);
  return REFUSED;
}
