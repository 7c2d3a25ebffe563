// A file of readings, row by row into columns.
import type {Zone} from '../zone.ts';
import {eachRow, type OddRow, type Source} from './each-row.ts';
import type {ValueColumns} from './layout.ts';
import {OffsetsSeen} from './offsets-seen.ts';
import {type OrderedReadings, ReadingColumns} from './reading-columns.ts';
import {humidityOf, type Rejected, temperatureOf, timeOfRow} from './rows.ts';
import {UsualRows} from './usual-rows.ts';

export interface Readings extends OrderedReadings {
  readonly kind: 'readings';
  /** Rows below the heading that are not blank: readings + duplicates + rejected. */
  readonly rows: number;
  readonly rejected: readonly Rejected[];
  /** Whose civil days the file's are: the offset its instants carry, else the zone they were read in. */
  readonly zone: Zone;
}

export function readReadings(source: Source, values: ValueColumns & {kind: 'readings'}): Readings {
  const {layout} = source;
  const columns = new ReadingColumns();
  const offsets = new OffsetsSeen();
  const rejected: Rejected[] = [];
  const usual = UsualRows.of(layout, columns, offsets);
  eachRow(source, usual, row => {
    const what = take(row);
    if (what !== undefined) rejected.push({row: row.line, what});
  });

  /** What is wrong with the row, if anything. */
  function take({cells, unclosed}: OddRow): string | undefined {
    if (unclosed) return 'a quote is not closed';
    const time = timeOfRow(cells, layout);
    if (typeof time === 'string') return time;
    const temperature = temperatureOf(cells, values.temperature, layout.unit);
    if (typeof temperature === 'string') return temperature;
    const humidity = humidityOf(cells, values.humidity);
    if (typeof humidity === 'string') return humidity;
    const {meaning, offsetMs = Number.NaN} = time;
    if (meaning.kind === 'two') columns.pushDoubtful(meaning.first, meaning.second, temperature, humidity);
    else columns.push(meaning.at, temperature, humidity);
    if (layout.time.kind !== 'epoch')
      offsets.see(meaning.kind === 'two' ? meaning.first : meaning.at, offsetMs);
    return undefined;
  }

  return {
    kind: 'readings',
    ...columns.finish(),
    rows: columns.size + rejected.length,
    rejected,
    zone: offsets.zone(layout.zone),
  };
}
