// The climate of a unit as tables of text, for a terminal of 80 columns.
import type {TimeInClass} from '../climate/time-by-class.ts';
import type {Civil} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {textTable} from './text-table.ts';
import {dayWords} from './time-words.ts';

interface DayRow {
  readonly day: string;
  readonly minimumC: number | null;
  readonly meanC: number | null;
  readonly maximumC: number | null;
  readonly known: number;
  readonly estimated: number;
  readonly humidity: {readonly minimum: number; readonly mean: number; readonly maximum: number} | null;
}

export function dayTable(days: readonly DayRow[], civil: Civil, now: Instant): string {
  const degrees = (celsius: number | null) => celsius?.toFixed(1) ?? '–';
  const isHumid = days.some(({humidity}) => humidity !== null);
  return textTable(days, [
    {head: 'day', cell: row => dayWords(row.day, civil, now)},
    {head: 'coolest', right: true, cell: row => degrees(row.minimumC)},
    {head: 'mean', right: true, cell: row => degrees(row.meanC)},
    {head: 'warmest °C', right: true, cell: row => degrees(row.maximumC)},
    ...(isHumid
      ? [
          {
            head: 'humidity %',
            right: true,
            cell: ({humidity}: DayRow) =>
              humidity === null
                ? '–'
                : `${humidity.mean.toFixed(0)} (${humidity.minimum.toFixed(0)} to ${humidity.maximum.toFixed(0)})`,
          },
        ]
      : []),
    {
      head: '',
      cell: ({known, estimated}) =>
        [
          ...(known > 0.995 ? [] : [`${Math.floor(known * 100)} % known`]),
          ...(estimated < 0.005 ? [] : [`${Math.ceil(estimated * 100)} % estimated`]),
        ].join(', '),
    },
  ]);
}

const BAR_CELLS = 30;

/** Hours in each class, with a bar; filled-in hours are told apart in words. */
export function classTable(classes: readonly TimeInClass[], bar: string): string {
  const most = Math.max(...classes.map(({hours}) => hours));
  const all = classes.reduce((sum, {hours}) => sum + hours, 0);
  return textTable(classes, [
    {head: '°C', right: true, cell: ({fromC, toC}) => `${fromC} to ${toC}`},
    {head: 'hours', right: true, cell: ({hours}) => hours.toFixed(1)},
    {head: 'share', right: true, cell: ({hours}) => `${((100 * hours) / all).toFixed(1)} %`},
    {head: '', cell: ({hours}) => bar.repeat(Math.round((hours / most) * BAR_CELLS))},
    {
      head: '',
      cell: ({filledHours}) => (filledHours >= 0.05 ? `${filledHours.toFixed(1)} of them filled in` : ''),
    },
  ]);
}

/** Two columns of twelve hours. */
export function meanDayTable(means: readonly number[]): string {
  const hour = (i: number) => `${String(i).padStart(2, '0')} to ${String(i + 1).padStart(2, '0')}`;
  const rows = Array.from({length: 12}, (_, i) => i);
  return textTable(rows, [
    {head: 'hour', cell: i => hour(i)},
    {head: 'mean °C', right: true, cell: i => means[i]!.toFixed(1)},
    {head: '   hour', cell: i => `   ${hour(i + 12)}`},
    {head: 'mean °C', right: true, cell: i => means[i + 12]!.toFixed(1)},
  ]);
}
