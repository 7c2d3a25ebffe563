import {setTimeout as wait} from 'node:timers/promises';
import {InvalidArgumentError, Option} from 'commander';
import type {TemperatureUnit} from '../exchange/temperature-unit.ts';
import {type Imported, type ImportWishes, importFiles} from '../work/import.ts';
import {type Dropped, WatchedFolder} from '../work/watch-folder.ts';
import {type Command, examples, type Invocation, type Options, textOption} from './command.ts';
import {durationWord} from './words.ts';

const REJECTED_SHOWN = 10;
const LOOK_EVERY_MS = 2000;
const units: readonly TemperatureUnit[] = ['C', 'F', 'K'];

export const command: Command = {
  declare(command) {
    command
      .argument('<logger>', 'the logger whose readings these are')
      .argument('[file...]', 'files as it exports them: comma, semicolon or tab')
      .option('--dry-run', 'say how the files are understood; import nothing')
      .option('--zone <zone>', 'of instants without an offset: IANA or +01:00 (default: the room’s)')
      .option('--columns <text>', 'which column is what: time=1,temperature=2,humidity=3')
      .option('--format <text>', 'how dates are written: dmy, mdy, ymd, or a luxon format')
      .option('--sensor <name>', 'which of several sensors in the file')
      .addOption(new Option('--unit <unit>', 'of the temperatures, whatever the file says').choices(units))
      .option('--clock <off>', 'how far the logger’s clock is ahead (+7m) or behind (-90s)', durationWord)
      .option('--afresh', 'without what is remembered of this logger’s files')
      .option('--watch <dir>', 'import whatever files appear in this folder, until Ctrl+C')
      .option('--once', 'with --watch: what lies there now, then stop');
    examples(
      command,
      'import L1 logger.csv',
      'import L1 export.txt --dry-run --columns date=1,time=2,temperature=4 --format dmy',
      'import L2 both.csv --sensor "shelf 2" --clock +7m',
      'import L1 --watch ~/loggers/L1',
    );
  },
  async run(invocation, [logger = '', ...files], options) {
    const wishes = wishesIn(options, invocation);
    const folder = textOption(options, 'watch');
    if ((folder === undefined) === (files.length === 0))
      throw new InvalidArgumentError('give files, or a folder with --watch.');
    if (folder !== undefined)
      return watch(new WatchedFolder(invocation, logger, folder, wishes), invocation, options);
    const answer = await importFiles(invocation, logger, files, wishes);
    const dryRun = wishes.dryRun ?? false;
    invocation.answer(answer, () => answer.map(each => told(each, dryRun)).join('\n\n'));
  },
};

function wishesIn(options: Options, invocation: Invocation): ImportWishes {
  return {
    dryRun: options.dryRun === true,
    zone: textOption(options, 'zone'),
    columns: textOption(options, 'columns'),
    format: textOption(options, 'format'),
    sensor: textOption(options, 'sensor'),
    unit: units.find(unit => unit === options.unit),
    clockMs: typeof options.clock === 'number' ? options.clock : undefined,
    afresh: options.afresh === true,
    ...(invocation.json ? {} : {progress: progressLine()}),
  };
}

/** Says on a terminal how far a long file has been read; a short one is read before it would show. */
function progressLine(): (file: string, share: number) => void {
  const begun = Date.now();
  let shown = 0;
  return (file, share) => {
    const now = Date.now();
    if (!process.stderr.isTTY || now - begun < 500 || (now - shown < 100 && share < 1)) return;
    shown = now;
    process.stderr.write(share < 1 ? `\r${file}: ${Math.floor(share * 100)} % read` : '\r\u001B[K');
  };
}

async function watch(folder: WatchedFolder, invocation: Invocation, {once}: Options): Promise<void> {
  const say = (dropped: readonly Dropped[]) => {
    for (const each of dropped) invocation.answer(jsonOf(each), () => droppedWords(each));
  };
  if (once === true) {
    const dropped = await folder.look(true);
    if (dropped.length === 0 && !invocation.json)
      invocation.warn(`nothing new for ${folder.logger} in ${folder.folder}`);
    return say(dropped);
  }
  if (!invocation.json) invocation.warn(`watching ${folder.folder} for ${folder.logger}; Ctrl+C ends it`);
  for (;;) {
    say(await folder.look());
    await wait(LOOK_EVERY_MS);
  }
}

/** One line of JSON a file. */
function jsonOf(dropped: Dropped): unknown {
  if ('imported' in dropped) return dropped.imported;
  const {what, where, mend} = dropped.refused;
  return {file: dropped.file, error: {what, where, mend}};
}

function droppedWords(dropped: Dropped): string {
  return 'imported' in dropped ? told(dropped.imported, false) : `not imported: ${dropped.refused.message}`;
}

function told(
  {file, rows, added, duplicates, rejected, passedOver, from, to, understood, doubts, changedWords}: Imported,
  dryRun: boolean,
): string {
  const verb = dryRun ? 'would be added' : 'added';
  const lines = [
    `${file}: ${rows} rows, ${added} ${verb}, ${duplicates} known already, ${rejected.length} rejected`,
    `  read as  ${understood}`,
  ];
  if (from !== null && to !== null) lines.push(`  from     ${from}  to  ${to}`);
  if (passedOver > 0) lines.push(`  besides  ${passedOver} rows of other sensors`);
  lines.push(...doubts.map(doubt => `  look     ${doubt}`));
  const shown = rejected.slice(0, REJECTED_SHOWN).map(({row, what}) => `  row ${row}: ${what}`);
  const more = rejected.length > shown.length ? [`  and ${rejected.length - shown.length} more`] : [];
  const changed = changedWords.map(words => `  changed  ${words}`);
  return [...lines, ...shown, ...more, ...changed].join('\n');
}
