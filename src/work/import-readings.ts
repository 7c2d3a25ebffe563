// Which readings of logger files a room does not hold yet.
import {basename} from 'node:path';
import type {Series} from '../climate/series.ts';
import {type Unheld, unheld} from '../climate/unheld.ts';
import {sha256Of} from '../exchange/logger-file/chunks.ts';
import {type ReadingsFile, seriesOf} from '../exchange/logger-file/logger-file.ts';
import {between, concatenate} from '../room/readings.ts';
import type {NewReadings, Room} from '../room/room.ts';

export interface FileAdds {
  readonly file: ReadingsFile;
  readonly series: Series;
  readonly added: number;
  /** Rows left out although the room or the file has another temperature for their instant. */
  readonly conflicts: number;
}

/** Later files add only what the earlier ones did not have. */
export async function freshReadings(
  room: Room,
  logger: string,
  files: readonly ReadingsFile[],
): Promise<{readonly adds: readonly FileAdds[]; readonly readings: readonly NewReadings[]}> {
  const adds: FileAdds[] = [];
  const readings: NewReadings[] = [];
  for (const file of files) {
    const series = seriesOf(file);
    let {series: fresh, conflicts} = await notHeld(room, logger, series);
    for (const earlier of readings) {
      const left: Unheld = unheld(fresh, earlier.series);
      fresh = left.series;
      conflicts += left.conflicts;
    }
    adds.push({file, series, added: fresh.atDays.length, conflicts: conflicts + file.conflicts});
    if (fresh.atDays.length > 0)
      readings.push({logger, file: basename(file.file), hash: sha256Of(file.file), series: fresh});
  }
  return {adds, readings};
}

/** So much is fetched at a time: a million readings are never held twice. */
const WINDOW_DAYS = 92;

async function notHeld(room: Room, logger: string, series: Series): Promise<Unheld> {
  const span = room.span(logger);
  const {atDays} = series;
  if (span === undefined || atDays.length === 0) return {series, conflicts: 0};
  const pieces: Series[] = [];
  let conflicts = 0;
  for (let from = 0, to = 0; from < atDays.length; from = to) {
    const end = atDays[from]! + WINDOW_DAYS;
    while (to < atDays.length && atDays[to]! < end) to++;
    const [first, last] = [atDays[from]!, atDays[to - 1]!];
    const window = between(series, first, last);
    const isApart = last < span.fromDays || first > span.toDays;
    const left = isApart
      ? {series: window, conflicts: 0}
      : unheld(window, await room.series(logger, first, last));
    pieces.push(left.series);
    conflicts += left.conflicts;
  }
  return {series: concatenate(pieces), conflicts};
}
