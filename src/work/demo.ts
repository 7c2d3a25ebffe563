// The example room: an invented season, moved so that it lies around today.
import {existsSync, mkdtempSync, readdirSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {grouped} from '../care/grouped.ts';
import {rowsOf, type Series} from '../climate/series.ts';
import {civil as civilOf, numberOfDay} from '../exchange/civil.ts';
import {readInstant} from '../exchange/instants.ts';
import {chunksOf, sha256Of} from '../exchange/logger-file/chunks.ts';
import {readLoggerFile, seriesOf} from '../exchange/logger-file/logger-file.ts';
import type {Civil, Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {changeRoom} from '../room/change.ts';
import {createRoom} from '../room/create.ts';
import {demoFile, demoPath} from '../room/package-files.ts';
import type {NewReadings} from '../room/room.ts';
import {nowOf} from './desk.ts';
import {rememberLabels} from './labels.ts';
import {record} from './record.ts';
import type {Session} from './session.ts';
import {shifted} from './shift.ts';

/** The day of the season that becomes today. */
const SEASON_DAY: Day = '2026-06-12';
/** Midsummer of the season as it is written; chances of rest (diapause) go by it. */
const MIDSUMMER: Day = '2026-06-21';
/** The day on which its daybook begins. */
const FIRST_DAY: Day = '2026-02-02';
/** The lot whose specimens have their labels. */
const LABELLED = '26-014-A';
const LOGGERS = ['L1', 'L2', 'L3'];
/** One of the season's invented persons wrote it, so that whoever tries the room takes back only their own entries. */
const WRITER = 'Mirel Tovan';

/**
 * Make the example room in a folder that is absent or empty; without one, in a new folder of the system's temporary
 * place. What the season dates later than now is left out.
 * @returns the folder
 */
export async function makeDemo(session: Session, dir: string | undefined): Promise<string> {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  const civil = civilOf(zone);
  const now = nowOf(session, civil);
  const folder = dir ?? join(mkdtempSync(join(tmpdir(), 'teneral-')), 'room');
  if (existsSync(folder) && readdirSync(folder).length > 0)
    throw new Refusal('the folder is not empty', folder, 'Name one that is absent or empty.');
  await createRoom(folder, {name: 'example room', zone, by: session.by, now});
  const days = numberOfDay(civil.dayOf(now)) - numberOfDay(SEASON_DAY);
  const there = {...session, dir: folder, by: WRITER};
  await record(there, [midsummerOf(days, civil), ...(await seasonUntil(now, days, civil))]);
  const readings = LOGGERS.flatMap(logger => readingsOf(logger, now, days, civil));
  await changeRoom(folder, async () => ({entries: [], readings}), {by: WRITER, now});
  await rememberLabels(there, {lots: [LABELLED]});
  return folder;
}

/** Whatever month it is, the country that the season is invented for has early summer; it is known from the first day. */
function midsummerOf(days: number, civil: Civil): object {
  const midsummer = civil.addDays(MIDSUMMER, days).slice('yyyy-'.length);
  return {record: 'setting', midsummer, recordedAt: `${civil.addDays(FIRST_DAY, days)}T08:30`};
}

async function seasonUntil(now: Instant, days: number, civil: Civil): Promise<unknown[]> {
  const season: unknown = shifted(JSON.parse(await demoFile('season.json')), days, civil);
  return (Array.isArray(season) ? season : []).filter(record => !isLater(record, now, civil));
}

/** Dated or written down later than now. */
function isLater(record: unknown, now: Instant, civil: Civil): boolean {
  if (typeof record !== 'object' || record === null) return false;
  const dates = ['at', 'to', 'recordedAt'].map(field => (record as Record<string, unknown>)[field]);
  return dates.some(date => typeof date === 'string' && (readInstant(date, civil) ?? 0) > now);
}

/** Loggers are read out every fortnight. */
const READ_OUT_DAYS = 14;

/** A logger's readings at the same times of day, so many days later, as it was read out. */
function readingsOf(logger: string, now: Instant, days: number, civil: Civil): NewReadings[] {
  const file = `${logger}.csv`;
  const path = demoPath(join('loggers', file));
  const read = readLoggerFile(chunksOf(path), path, {zone: 'UTC'});
  if (read.kind !== 'readings') throw new RangeError(`${path} holds no readings`);
  const series = moved(seriesOf(read), now, days, civil);
  const hash = sha256Of(path);
  const readOuts = grouped([...series.atDays.keys()], row =>
    Math.floor((series.atDays[row]! * MS_PER_DAY - now) / MS_PER_DAY / READ_OUT_DAYS),
  );
  return [...readOuts].map(([fortnight, rows]) => {
    const recordedAt = civil.iso(Math.min(now, now + (fortnight + 1) * READ_OUT_DAYS * MS_PER_DAY));
    return {logger, file, hash, recordedAt, series: rowsOf(series, rows)};
  });
}

/** Wall times of the file as wall times in the room's zone; an hour that a clock change shows twice is read once. */
function moved(series: Series, now: Instant, days: number, civil: Civil): Series {
  const kept: {at: number; row: number}[] = [];
  series.atDays.forEach((wall, row) => {
    const text = new Date(wall * MS_PER_DAY).toISOString();
    const at = civil.at(civil.addDays(text.slice(0, 10), days), text.slice(11, 16)) / MS_PER_DAY;
    if (at * MS_PER_DAY <= now && at > (kept.at(-1)?.at ?? Number.NEGATIVE_INFINITY)) kept.push({at, row});
  });
  const rows = kept.map(({row}) => row);
  return {...rowsOf(series, rows), atDays: Float64Array.from(kept, ({at}) => at)};
}
