// Readings from loggers' files into the room: only what it does not hold yet, all of it or nothing.
import {chunksOf} from '../exchange/logger-file/chunks.ts';
import {
  type ExtremesFile,
  type LoggerFile,
  type ReadingsFile,
  readLoggerFile,
} from '../exchange/logger-file/logger-file.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import {valueAt} from '../records/state.ts';
import {changeRoom} from '../room/change.ts';
import type {Change, Room} from '../room/room.ts';
import {type Desk, openDesk} from './desk.ts';
import {type DaySpan, daySpans, recordOfDay} from './import-extremes.ts';
import {freshReadings} from './import-readings.ts';
import {type ChangedOutlook, changedOutlooks, changedWords, isLate} from './late-readings.ts';
import {entriesFor, parsed} from './record.ts';
import {blaming, fileWishes, type ReadingWishes, rememberedWords, toRemember} from './remembered-reading.ts';
import type {Session} from './session.ts';
import {clockWords, understoodWords} from './understood.ts';

/** One file, as `teneral import` answers: rows = added + duplicates + rejected. */
export interface Imported {
  readonly file: string;
  readonly rows: number;
  readonly added: number;
  /** Rows of instants that the file or the room has already. */
  readonly duplicates: number;
  /** Those of them that have another value than the one that stays. */
  readonly conflicts: number;
  readonly rejected: readonly {readonly row: number; readonly what: string}[];
  /** Rows of other sensors in the file, not counted among its rows. */
  readonly passedOver: number;
  /** First and last row that was read; null where there is none. */
  readonly from: string | null;
  readonly to: string | null;
  /** The unit the file is in: C, F or K. */
  readonly unit: string;
  /** How the file was understood, in words. */
  readonly understood: string;
  /** What a person should look at. */
  readonly doubts: readonly string[];
  /** What these readings changed of what was estimated without them; of several files told with the last. */
  readonly changed: readonly ChangedOutlook[];
  /** The same in words. */
  readonly changedWords: readonly string[];
}

export interface ImportWishes extends ReadingWishes {
  /** Say what would be done, and do nothing. */
  readonly dryRun?: boolean;
  /** Told how much of a file has been read, 0 to 1. */
  progress?(file: string, share: number): void;
}

/** @throws Refusal where the logger is unknown, or any of the files cannot be understood; nothing is imported then */
export async function importFiles(
  session: Session,
  logger: string,
  files: readonly string[],
  wishes: ImportWishes = {},
): Promise<Imported[]> {
  const desk = await openDesk(session);
  const history = desk.state.loggers.get(logger);
  if (history === undefined) throw unknownLogger(logger, desk);
  const {reads} = valueAt(history, desk.now);
  const remembered = rememberedWords(wishes, reads);
  const read = files.map(file => {
    try {
      const chunks = chunksOf(file, share => wishes.progress?.(file, share));
      return readLoggerFile(chunks, file, fileWishes(wishes, reads, desk.room.zone));
    } catch (error) {
      throw error instanceof Refusal ? blaming(error, remembered, logger) : error;
    }
  });
  const asked: Asked = {session, logger, desk, read, reads: toRemember(wishes, reads, read)};
  let plan: ImportPlan | undefined;
  let changed: readonly ChangedOutlook[] = [];
  if (wishes.dryRun === true) plan = await planOf((await openDesk(session)).room, asked);
  else {
    const room = await changeRoom(
      session.dir,
      async room => {
        plan = await planOf(room, asked);
        return plan.change;
      },
      {by: session.by, now: desk.now},
    );
    const last = desk.room.span(logger)?.toDays;
    const isFilling = plan?.change.readings?.some(({series}) =>
      isLate(series.atDays[0] ?? Number.POSITIVE_INFINITY, last),
    );
    if (isFilling === true) changed = await changedOutlooks(desk, room, logger);
  }
  return read.map((file, i) => ({
    ...answerOf(file, plan?.counts.get(file), desk, wishes),
    changed: i === read.length - 1 ? changed : [],
    changedWords: i === read.length - 1 ? changed.map(each => changedWords(each, desk)) : [],
  }));
}

interface Asked {
  readonly session: Session;
  readonly logger: string;
  readonly desk: Desk;
  readonly read: readonly LoggerFile[];
  readonly reads: ReturnType<typeof toRemember>;
}

interface Counts {
  readonly added: number;
  readonly conflicts: number;
  readonly from: Instant | undefined;
  readonly to: Instant | undefined;
  readonly rejected: LoggerFile['rejected'];
}

interface ImportPlan {
  readonly change: Change;
  readonly counts: ReadonlyMap<LoggerFile, Counts>;
}

/** What all files together add to the room as it stands. */
async function planOf(room: Room, {session, logger, desk, read, reads}: Asked): Promise<ImportPlan> {
  const {civil, now} = desk;
  const counts = new Map<LoggerFile, Counts>();
  const {adds, readings} = await freshReadings(room, logger, read.filter(isReadings));
  for (const {file, series, added, conflicts} of adds) {
    const at = (days: number | undefined) => (days === undefined ? days : Math.round(days * MS_PER_DAY));
    const [from, to] = [at(series.atDays[0]), at(series.atDays.at(-1))];
    counts.set(file, {added, conflicts, from, to, rejected: file.rejected});
  }

  const held = fold(room.entries, now).extremes.filter(each => each.logger === logger);
  const drafts = read.filter(isExtremes).flatMap(file => {
    const spans = daySpans(file, civil);
    const future = spans.filter(({to}) => to > now);
    const fresh = spans.filter(
      span => span.to <= now && !held.some(({from, to}) => from === span.from && to === span.to),
    );
    const notOver = future.map(({day, row}) => ({row, what: `the day ${day} is not over yet`}));
    const ends = {from: spans[0]?.from, to: spans.at(-1)?.to};
    counts.set(file, {added: 0, conflicts: 0, ...ends, rejected: [...file.rejected, ...notOver]});
    return fresh.map(span => ({file, span}));
  });
  const records = drafts.map(({span}) => recordOfDay(logger, span, civil));
  const remembering = reads === undefined ? [] : [{record: 'logger', code: logger, reads}];
  const given = parsed([...records, ...remembering], index => whereOf(drafts[index]));
  const entries = given.length === 0 ? [] : await entriesFor(given, room, session);
  const written = new Set(entries.map(({record: {key}}) => key));
  records.forEach(({key}, i) => {
    const {file} = drafts[i]!;
    const count = counts.get(file)!;
    // A day that two files give is the first one's.
    if (written.delete(key)) counts.set(file, {...count, added: count.added + 1});
  });
  return {change: {entries, readings}, counts};
}

function answerOf(
  file: LoggerFile,
  counts: Counts | undefined,
  {civil}: Desk,
  {clockMs}: ImportWishes,
): Omit<Imported, 'changed' | 'changedWords'> {
  const {added = 0, conflicts = 0, from, to, rejected = file.rejected} = counts ?? {};
  const iso = (at: Instant | undefined) => (at === undefined ? null : civil.iso(at));
  const clock = clockWords(clockMs);
  return {
    file: file.file,
    rows: file.rows,
    added,
    duplicates: file.rows - rejected.length - added,
    conflicts,
    rejected,
    passedOver: file.kind === 'readings' ? file.passedOver : 0,
    from: iso(from),
    to: iso(to),
    unit: file.layout.unit,
    understood: `${understoodWords(file)}${clock === undefined ? '' : `; ${clock}`}`,
    doubts: doubtsOf(file, rejected, conflicts),
  };
}

function doubtsOf({layout}: LoggerFile, rejected: LoggerFile['rejected'], conflicts: number): string[] {
  const skipped = rejected.filter(({what}) => what.startsWith('the clocks of')).length;
  return [
    ...(skipped === 0
      ? []
      : [
          `${skipped} rows stand in an hour that the clocks of ${layout.zone.name} skip: if the logger keeps one time all year, name it, such as --zone +01:00, or its summer is an hour off`,
        ]),
    ...(conflicts === 0
      ? []
      : [`${conflicts} of the rows known already have another temperature; the earlier ones stay`]),
  ];
}

function isReadings(file: LoggerFile): file is ReadingsFile {
  return file.kind === 'readings';
}

function isExtremes(file: LoggerFile): file is ExtremesFile {
  return file.kind === 'extremes';
}

function whereOf(draft: {readonly file: ExtremesFile; readonly span: DaySpan} | undefined): string {
  return draft === undefined ? 'import' : `${draft.file.file}, ${draft.span.day}`;
}

function unknownLogger(logger: string, {state}: Desk): Refusal {
  const close = nearest(logger, state.loggers.keys());
  const hint = close === undefined ? '' : `Did you mean ${close}? `;
  return new Refusal(
    `there is no logger "${logger}"`,
    'import',
    `${hint}A new one: teneral logger ${logger} automatic.`,
  );
}
