import {Argument, Option} from 'commander';
import {type LicenceName, licenceNames} from '../exchange/darwin-core/licences.ts';
import {writeCalendar} from '../work/calendar-file.ts';
import {exportDarwinCore} from '../work/darwin-core.ts';
import {openDesk} from '../work/desk.ts';
import {exportTables} from '../work/tables.ts';
import {type Command, examples, type Invocation, type Options, textOption} from './command.ts';
import {numberWord} from './words.ts';

const kinds = {'darwin-core': darwinCore, csv, calendar} as const;
const isKind = (word: string | undefined): word is keyof typeof kinds =>
  word !== undefined && Object.hasOwn(kinds, word);

export const command: Command = {
  declare(command) {
    command
      .addArgument(new Argument('<what>', 'what to write').choices(Object.keys(kinds)))
      .requiredOption('--out <path>', 'where to: darwin-core a .zip, csv a folder, calendar an .ics')
      .option('--title <text>', 'darwin-core: what the data are called')
      .option('--creator <name>', 'darwin-core: who answers for the data (default: --by)')
      .option('--email <address>', 'darwin-core: where to ask')
      .addOption(
        new Option('--licence <name>', 'darwin-core: under which the data may be used').choices(licenceNames),
      )
      .option('--days <n>', 'calendar: how many days, from today on', numberWord, 28)
      .option('--for <name>', 'calendar: only what this person takes')
      .option('--each', 'calendar: an event for each task, in place of one for each shelf');
    examples(
      command,
      'export darwin-core --out room.zip --licence CC-BY --creator "A. Keeper"',
      'export csv --out tables',
      'export calendar --out care.ics',
      'export calendar --for "A. Keeper" --out mine.ics',
    );
  },
  async run(invocation, [what], options) {
    await kinds[isKind(what) ? what : 'calendar'](invocation, String(options.out), options);
  },
};

/** The care ahead as iCalendar (RFC 5545); written over the file before, it says what has changed. */
async function calendar(invocation: Invocation, file: string, options: Options): Promise<void> {
  const desk = await openDesk(invocation);
  const {events, added, changed, cancelled} = await writeCalendar(desk, file, {
    days: Number(options.days),
    who: textOption(options, 'for'),
    each: options.each === true,
  });
  invocation.answer(
    {file, events: events.length, added, changed, cancelled},
    () => `${file}: ${events.length} events, ${added} new, ${changed} changed, ${cancelled} cancelled`,
  );
}

/** The room as a Darwin Core archive, for aggregators. */
async function darwinCore(invocation: Invocation, file: string, options: Options): Promise<void> {
  const answer = await exportDarwinCore(invocation, file, {
    title: textOption(options, 'title'),
    creator: textOption(options, 'creator'),
    email: textOption(options, 'email'),
    licence: licenceNamed(textOption(options, 'licence')),
  });
  const unlicensed =
    answer.licence === null
      ? [`no licence was chosen; aggregators take data under ${licenceNames.join(', ')} (--licence)`]
      : [];
  invocation.answer(answer, () => [`${file}:`, ...rowsIn(answer.rows), ...unlicensed].join('\n  '));
}

function licenceNamed(name: string | undefined): LicenceName | undefined {
  return licenceNames.find(known => known === name);
}

/** The room as comma-separated tables, one file each. */
async function csv(invocation: Invocation, folder: string): Promise<void> {
  const answer = await exportTables(invocation, folder);
  invocation.answer(answer, () => [`${folder}:`, ...rowsIn(answer.rows)].join('\n  '));
}

function rowsIn(rows: Readonly<Record<string, number>>): string[] {
  return Object.entries(rows).map(([file, count]) => `${file.padEnd(26)}${String(count).padStart(6)} rows`);
}
