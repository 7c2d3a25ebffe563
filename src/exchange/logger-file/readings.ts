// A file of readings, row by row into columns.
import type {Zone} from '../zone.ts';
import {eachRow, type OddRow, type Source} from './each-row.ts';
import type {ValueColumns} from './layout.ts';
import {OffsetsSeen} from './offsets-seen.ts';
import {type OrderedReadings, ReadingColumns} from './reading-columns.ts';
import {mixedReadings, severalSensors} from './refusals.ts';
import {humidityOf, type Rejected, temperatureOf, timeOfRow} from './rows.ts';
import {isNamed} from './sensors.ts';
import {timeIn} from './time-columns.ts';
import {UsualRows} from './usual-rows.ts';

export interface Readings extends OrderedReadings {
  readonly kind: 'readings';
  /** Rows below the heading that are not blank: readings + duplicates + rejected. */
  readonly rows: number;
  readonly rejected: readonly Rejected[];
  /** Rows of other sensors than the one that is read; not among `rows`. */
  readonly passedOver: number;
  /** Whose civil days the file's are: the offset its instants carry, else the zone they were read in. */
  readonly zone: Zone;
}

/** A file in which so many rows contradict an earlier one is no course of one sensor. */
const MIXED_SHARE = 0.2;
const FEW_CONFLICTS = 2;

export function readReadings(source: Source, values: ValueColumns & {kind: 'readings'}): Readings {
  const {layout} = source;
  const columns = new ReadingColumns();
  const offsets = new OffsetsSeen();
  const rejected: Rejected[] = [];
  const usual = UsualRows.of(layout, columns, offsets);
  let passedOver = 0;
  eachRow(source, usual, row => {
    if (isOthers(row)) {
      passedOver++;
      return;
    }
    const what = take(row);
    if (what !== undefined) rejected.push({row: row.line, what});
  });

  /** @throws Refusal where the row is another sensor's and nobody chose one */
  function isOthers({cells}: OddRow): boolean {
    const {sensor} = layout;
    const name = cells[sensor?.column ?? -1] ?? '';
    if (sensor === undefined || isNamed(name, sensor.name) || (sensor.only && name === '')) return false;
    if (sensor.only && timeIn(cells, layout.time, layout.dates) !== undefined)
      throw severalSensors(source.file, [sensor.name, name]);
    return !sensor.only;
  }

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

  const ordered = columns.finish();
  if (ordered.conflicts > Math.max(FEW_CONFLICTS, MIXED_SHARE * columns.size))
    throw mixedReadings(source.file, ordered.conflicts, columns.size);
  return {
    kind: 'readings',
    ...ordered,
    rows: columns.size + rejected.length,
    rejected,
    passedOver,
    zone: offsets.zone(layout.zone),
  };
}
