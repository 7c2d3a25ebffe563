// Ticks of a time axis in characters: hours, days, weeks or months, as many as have room.
import type {Civil, Day} from '../../records/civil.ts';
import {dayMonth, dayOfDays, daysAt, monthOf, weekdayDay} from './day-words.ts';

export interface Tick {
  readonly atDays: number;
  readonly label: string;
}

interface Scale {
  /** About how far apart two ticks are. */
  readonly apartDays: number;
  readonly labelWidth: number;
  /** Ticks of one civil day. */
  ticks(day: Day, civil: Civil): readonly Tick[];
}

const everyHours = (hours: number): Scale => ({
  apartDays: hours / 24,
  labelWidth: 6,
  ticks: (day, civil) =>
    Array.from({length: 24 / hours}, (_, i) => {
      const time = `${String(i * hours).padStart(2, '0')}:00`;
      return {atDays: daysAt(day, time, civil), label: i === 0 ? weekdayDay(day, civil) : time};
    }),
});

/** One tick at the beginning of each day that is asked for. */
const onDays = (
  apartDays: number,
  labelWidth: number,
  isOne: (day: Day, civil: Civil) => boolean,
  label: (day: Day, civil: Civil) => string,
): Scale => ({
  apartDays,
  labelWidth,
  ticks: (day, civil) =>
    isOne(day, civil) ? [{atDays: daysAt(day, '00:00', civil), label: label(day, civil)}] : [],
});

const SCALES: readonly Scale[] = [
  everyHours(1),
  everyHours(3),
  everyHours(6),
  everyHours(12),
  onDays(1, 6, () => true, weekdayDay),
  // Weekdays alone, each Monday with its date instead: tickLine leaves out what that hides.
  onDays(1, 3, () => true, mondayDateOrWeekday),
  onDays(7, 6, (day, civil) => civil.weekdayOf(day) === 'mon', dayMonth),
  onDays(14, 6, day => day.endsWith('-01') || day.endsWith('-15'), dayMonth),
  onDays(30, 3, day => day.endsWith('-01'), monthOf),
  onDays(91, 3, day => /-(01|04|07|10)-01$/.test(day), monthOf),
];

/** The closest ticks whose labels have room in so many columns. */
export function timeTicks(fromDays: number, toDays: number, columns: number, civil: Civil): Tick[] {
  const perDay = columns / (toDays - fromDays);
  const scale =
    SCALES.find(({apartDays, labelWidth}) => apartDays * perDay >= labelWidth + 1) ??
    SCALES[SCALES.length - 1]!;
  const ticks: Tick[] = [];
  const end = civil.addDays(dayOfDays(toDays, civil), 1);
  for (let day = dayOfDays(fromDays, civil); day < end; day = civil.addDays(day, 1))
    ticks.push(...scale.ticks(day, civil).filter(({atDays}) => fromDays <= atDays && atDays < toDays));
  return ticks;
}

/** The labels below their instants, those without room left out. */
export function tickLine(ticks: readonly Tick[], fromDays: number, toDays: number, columns: number): string {
  const cells: string[] = Array.from({length: columns}, () => ' ');
  let free = 0;
  for (const {atDays, label} of ticks) {
    const at = Math.round(((atDays - fromDays) / (toDays - fromDays)) * columns);
    if (at < free || at + label.length > columns) continue;
    for (let k = 0; k < label.length; k++) cells[at + k] = label[k]!;
    free = at + label.length + 1;
  }
  return cells.join('').trimEnd();
}

function mondayDateOrWeekday(day: Day, civil: Civil): string {
  return civil.weekdayOf(day) === 'mon' ? dayMonth(day) : weekdayDay(day, civil).slice(0, 3);
}
