// How a logger file was understood, in words.
import type {LoggerFile} from '../exchange/logger-file/logger-file.ts';
import {unitSign} from '../exchange/temperature-unit.ts';

/** Its encoding, its delimiter, its columns, its dates, its zone, its unit. */
export function understoodWords(file: LoggerFile): string {
  const {layout, encoding} = file;
  const {delimiter, heading, time, values, unit, dates, zone, sensor} = layout;
  const name = (column: number) =>
    heading?.names[column] ? `"${heading.names[column]}"` : `column ${column + 1}`;
  const separated = {',': 'commas', ';': 'semicolons', '\t': 'tabs'}[delimiter];
  const when =
    time.kind === 'date-and-clock'
      ? `time from ${name(time.date)} and ${name(time.clock)}`
      : `time from ${name(time.column)}`;
  const fraction = file.kind === 'readings' && file.humidityAsFraction ? ' as a fraction of one' : '';
  const what =
    values.kind === 'extremes'
      ? `minimum from ${name(values.minimum)}, maximum from ${name(values.maximum)}`
      : `temperature from ${name(values.temperature)}${values.humidity === undefined ? '' : `, humidity from ${name(values.humidity)}${fraction}`}`;
  const order =
    time.kind === 'epoch'
      ? `in ${time.unitMs === 1 ? 'milliseconds' : 'seconds'} since 1970`
      : `${dates.kind === 'numeric' ? dateWords[dates.order] : `dates as ${dates.format}`}, zone ${zone.name}`;
  const whose =
    sensor === undefined || sensor.only ? '' : `; sensor "${sensor.name}" from ${name(sensor.column)}`;
  return `${encoding}, ${separated}; ${when}, ${order}; ${what}, ${unitSign[unit]}${whose}`;
}

const dateWords = {dmy: 'day before month', mdy: 'month before day', ymd: 'year first'} as const;

/** "7 min ahead, taken back"; undefined where the clock is right. */
export function clockWords(clockMs: number | undefined): string | undefined {
  if (clockMs === undefined || clockMs === 0) return undefined;
  const minutes = Math.abs(clockMs) / 60_000;
  const far = minutes < 60 ? `${round(minutes)} min` : `${round(minutes / 60)} h`;
  return `the logger’s clock is ${far} ${clockMs > 0 ? 'ahead' : 'behind'}, and that is taken back`;
}

function round(value: number): number {
  return Math.round(value * 100) / 100;
}
