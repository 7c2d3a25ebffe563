// Readings from a logger's file into the room: only what it does not hold yet, all of it or nothing.
import {basename} from 'node:path';
import type {Series} from '../climate/series.ts';
import {unheld} from '../climate/unheld.ts';
import {chunksOf, sha256Of} from '../exchange/logger-file/chunks.ts';
import {
  type ExtremesFile,
  type LoggerFile,
  type ReadingsFile,
  readLoggerFile,
  seriesOf,
} from '../exchange/logger-file/logger-file.ts';
import {convert, unitSign} from '../exchange/temperature-unit.ts';
import type {Civil} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import type {Extremes} from '../records/state.ts';
import {changeRoom} from '../room/change.ts';
import type {NewReadings, Room} from '../room/room.ts';
import {type Desk, openDesk} from './desk.ts';
import {record} from './record.ts';
import type {Session} from './session.ts';

/** One file, as `teneral import` answers: rows = added + duplicates + rejected. */
export interface Imported {
  readonly file: string;
  readonly rows: number;
  readonly added: number;
  /** Rows of instants that the file or the room has already. */
  readonly duplicates: number;
  readonly rejected: readonly {readonly row: number; readonly what: string}[];
  /** First and last row that was read; null where there is none. */
  readonly from: string | null;
  readonly to: string | null;
  /** The unit the file is in: C, F or K. */
  readonly unit: string;
  /** How the file was understood, in words. */
  readonly understood: string;
}

export interface ImportWishes {
  readonly columns?: string | undefined;
  readonly format?: string | undefined;
  /** Zone of instants without an offset; default: the room's. */
  readonly zone?: string | undefined;
  /** Say what would be done, and do nothing. */
  readonly dryRun?: boolean;
}

/** @throws Refusal where the logger is unknown, or any of the files cannot be understood; nothing is imported then */
export async function importFiles(
  session: Session,
  logger: string,
  files: readonly string[],
  wishes: ImportWishes = {},
): Promise<Imported[]> {
  const desk = await openDesk(session);
  if (!desk.state.loggers.has(logger)) throw unknownLogger(logger, desk);
  const zone = wishes.zone ?? desk.room.zone;
  const read = files.map(file => readLoggerFile(chunksOf(file), file, {...wishes, zone}));
  const readings = read.filter(file => file.kind === 'readings');
  const answers = new Map<LoggerFile, Imported>();
  if (readings.length > 0)
    await importReadings(session, logger, readings, desk, answers, wishes.dryRun ?? false);
  for (const file of read)
    if (file.kind === 'extremes')
      answers.set(file, await importExtremes(session, logger, file, desk, wishes.dryRun ?? false));
  return read.map(file => answers.get(file)!);
}

/** All files in one change: the later ones add only what the earlier ones did not have. */
async function importReadings(
  session: Session,
  logger: string,
  files: readonly ReadingsFile[],
  {civil, now}: Desk,
  answers: Map<LoggerFile, Imported>,
  dryRun: boolean,
): Promise<void> {
  const plan = async (room: Room): Promise<NewReadings[]> => {
    const added: NewReadings[] = [];
    for (const file of files) {
      const series = seriesOf(file);
      const fresh = added.reduce(
        (rest, earlier) => unheld(rest, earlier.series),
        await notHeld(room, logger, series),
      );
      answers.set(file, answerOf(file, fresh.atDays.length, series, civil));
      if (fresh.atDays.length > 0)
        added.push({logger, file: basename(file.file), hash: sha256Of(file.file), series: fresh});
    }
    return added;
  };
  if (dryRun) await plan((await openDesk(session)).room);
  else
    await changeRoom(session.dir, async room => ({entries: [], readings: await plan(room)}), {
      by: session.by,
      now,
    });
}

async function notHeld(room: Room, logger: string, series: Series): Promise<Series> {
  const {atDays} = series;
  if (atDays.length === 0 || room.span(logger) === undefined) return series;
  return unheld(series, await room.series(logger, atDays[0]!, atDays.at(-1)!));
}

function answerOf(file: ReadingsFile, added: number, {atDays}: Series, civil: Civil): Imported {
  const iso = (days: number | undefined) => (days === undefined ? null : civil.iso(days * MS_PER_DAY));
  return {
    file: file.file,
    rows: file.rows,
    added,
    duplicates: file.rows - file.rejected.length - added,
    rejected: file.rejected,
    from: iso(atDays[0]),
    to: iso(atDays.at(-1)),
    unit: file.layout.unit,
    understood: understoodWords(file),
  };
}

/** Each day of extremes becomes a record, from one midnight of the room to the next. */
async function importExtremes(
  session: Session,
  logger: string,
  file: ExtremesFile,
  {civil, state, now}: Desk,
  dryRun: boolean,
): Promise<Imported> {
  const spans = file.days.map(({day, row, minimum, maximum}) => ({
    day,
    row,
    from: civil.at(day, '00:00'),
    to: civil.at(civil.addDays(day, 1), '00:00'),
    minimum: convert(minimum, file.layout.unit, 'C'),
    maximum: convert(maximum, file.layout.unit, 'C'),
  }));
  const isHeld = ({from, to}: {from: number; to: number}) =>
    state.extremes.some((held: Extremes) => held.logger === logger && held.from === from && held.to === to);
  const past = spans.filter(({to}) => to <= now);
  const fresh = past.filter(span => !isHeld(span));
  if (!dryRun)
    await record(
      session,
      fresh.map(({from, to, minimum, maximum}) => ({
        record: 'extremes',
        logger,
        from: civil.iso(from),
        to: civil.iso(to),
        minimum,
        maximum,
      })),
      index => `${file.file}, ${fresh[index]!.day}`,
    );
  const future = spans
    .filter(({to}) => to > now)
    .map(({day, row}) => ({row, what: `the day ${day} is not over yet`}));
  const rejected = [...file.rejected, ...future];
  return {
    file: file.file,
    rows: file.rows,
    added: fresh.length,
    duplicates: file.rows - rejected.length - fresh.length,
    rejected,
    from: spans[0] === undefined ? null : civil.iso(spans[0].from),
    to: spans.at(-1) === undefined ? null : civil.iso(spans.at(-1)!.to),
    unit: file.layout.unit,
    understood: understoodWords(file),
  };
}

/** Its delimiter, its columns, its dates, its unit, its zone. */
function understoodWords({layout, encoding}: LoggerFile): string {
  const {delimiter, heading, time, values, unit, dates, zone} = layout;
  const name = (column: number) =>
    heading?.names[column] ? `"${heading.names[column]}"` : `column ${column + 1}`;
  const separated = {',': 'commas', ';': 'semicolons', '\t': 'tabs'}[delimiter];
  const when =
    time.kind === 'date-and-clock'
      ? `time from ${name(time.date)} and ${name(time.clock)}`
      : `time from ${name(time.column)}`;
  const what =
    values.kind === 'extremes'
      ? `minimum from ${name(values.minimum)}, maximum from ${name(values.maximum)}`
      : `temperature from ${name(values.temperature)}${values.humidity === undefined ? '' : `, humidity from ${name(values.humidity)}`}`;
  const order = dates.kind === 'numeric' ? dateWords[dates.order] : `dates as ${dates.format}`;
  return `${encoding}, ${separated}; ${when}, ${order}, zone ${zone.name}; ${what}, ${unitSign[unit]}`;
}

const dateWords = {dmy: 'day before month', mdy: 'month before day', ymd: 'year first'} as const;

function unknownLogger(logger: string, {state}: Desk): Refusal {
  const close = nearest(logger, state.loggers.keys());
  const hint = close === undefined ? '' : `Did you mean ${close}? `;
  return new Refusal(
    `there is no logger "${logger}"`,
    'import',
    `${hint}A new one: teneral logger ${logger} automatic.`,
  );
}
