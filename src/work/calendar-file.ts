// The care ahead as a calendar file: rounds by shelf, visits on closed days, adults to be expected.
import {createHash} from 'node:crypto';
import {existsSync, readFileSync} from 'node:fs';
import {openTimeOf} from '../care/calendar.ts';
import {grouped} from '../care/grouped.ts';
import type {CareInput} from '../care/task.ts';
import {withAmount} from '../care/titles.ts';
import {shelfOf} from '../care/walking-order.ts';
import {dateWords} from '../care/when-words.ts';
import type {CalendarEvent} from '../exchange/icalendar/event.ts';
import {readCalendarFile} from '../exchange/icalendar/read.ts';
import {type Succession, succeeding} from '../exchange/icalendar/succeeding.ts';
import {calendarFile} from '../exchange/icalendar/write.ts';
import {writeOutput} from '../exchange/output-file.ts';
import {unitsByTask} from '../exchange/pictures/agenda.ts';
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {type Ahead, type PlannedDay, type PlannedItem, plannedDays} from './ahead.ts';
import type {Desk} from './desk.ts';
import {careInput} from './today.ts';

export interface CalendarWishes {
  readonly days: number;
  /** Only what this person takes. */
  readonly who?: string | undefined;
  /** One event for each task, in place of one for each shelf. */
  readonly each?: boolean;
}

/**
 * Write the calendar file, as it follows the one that stands in its place.
 * @throws Refusal where the place holds something else, or cannot be written
 */
export async function writeCalendar(desk: Desk, path: string, wishes: CalendarWishes): Promise<Succession> {
  const {civil, now, room} = desk;
  const input = await careInput(desk);
  const before = fileBefore(path, desk);
  const planned = eventsOf(plannedDays(input, wishes.days, wishes.who), input, wishes, idOf(desk));
  const succession = succeeding(before, planned, now, civil);
  await writeOutput(
    [{path, content: calendarFile(room.name, succession.events, civil)}],
    async () => undefined,
  );
  return succession;
}

function fileBefore(path: string, {civil}: Desk) {
  if (!existsSync(path)) return [];
  const events = readCalendarFile(readFileSync(path, 'utf8'), civil);
  if (events !== undefined) return events;
  throw new Refusal(
    'a file that is no calendar of ours stands here',
    path,
    'Name another file, or remove it.',
  );
}

/** Two rooms in one calendar are told apart by it. */
function idOf({room}: Desk): string {
  return createHash('sha256').update(`${room.name}\n${room.zone}`).digest('hex').slice(0, 12);
}

export function eventsOf(
  {days, visits}: Ahead,
  input: CareInput,
  {each = false}: Pick<CalendarWishes, 'each'>,
  room: string,
): CalendarEvent[] {
  const {civil} = input;
  const open = openTimeOf(input.state.calendar, civil);
  const rounds = days.flatMap(day => {
    const items = day.items.filter(({visit}) => !visit);
    const opening = open.openings(day.day)[0]?.from;
    const start = (item: PlannedItem) => startOf(item, opening);
    return each
      ? items.map(item => taskEvent(item, start(item), room, input))
      : shelfEvents(day, items, start, room, input);
  });
  const coming = visits.map(
    ({from, to, jobs}, i): CalendarEvent => ({
      uid: `visit.${civil.dayOf(to)}${numberOnDay(visits, i, civil)}@${room}.teneral`,
      summary: `visit: ${unitsByTask(jobs.map(({rule, unit}) => ({task: rule.task, unit: unit.code}))).join('; ')}`,
      description: `The room is closed, and this cannot wait. Any time from ${dateWords(from, civil)} to ${dateWords(to, civil)} will do.`,
      when: {from, to},
    }),
  );
  return [...rounds, ...coming, ...emergenceEvents(input, room)];
}

/** The second visit on one day is ".2". */
function numberOnDay(visits: Ahead['visits'], i: number, civil: CareInput['civil']): string {
  const day = civil.dayOf(visits[i]!.to);
  const before = visits.slice(0, i).filter(({to}) => civil.dayOf(to) === day).length;
  return before === 0 ? '' : `.${before + 1}`;
}

/** Work of one shelf in the morning and in the evening are two events. */
const APART_MS = 4 * MS_PER_HOUR;

/** When the round begins, unless the work is for later that day. */
function startOf({at}: PlannedItem, opening: Instant | undefined): Instant {
  return opening !== undefined && at - opening < APART_MS ? opening : at;
}

function shelfEvents(
  {day}: PlannedDay,
  items: readonly PlannedItem[],
  start: (item: PlannedItem) => Instant,
  room: string,
  {civil}: CareInput,
): CalendarEvent[] {
  const parts = grouped(
    items,
    item => `${shelfOf(item.place)}\n${start(item) === start(items[0]!) ? '' : 'later'}`,
  );
  return [...parts].map(([key, alike]) => {
    const [shelf = '', part = ''] = key.split('\n');
    const from = Math.min(...alike.map(start));
    const minutes = alike.reduce((sum, item) => sum + item.minutes, 0);
    return {
      uid: `round.${day}.${slug(shelf)}${part === '' ? '' : '.later'}@${room}.teneral`,
      summary: `${shelf}: ${unitsByTask(alike).join('; ')}`,
      description: alike.map(item => lineOf(item, civil)).join('\n'),
      location: shelf,
      when: {from, to: from + minutesMs(minutes)},
    };
  });
}

function taskEvent(item: PlannedItem, from: Instant, room: string, {civil}: CareInput): CalendarEvent {
  return {
    uid: `${item.turn.replaceAll(/[:#]/g, '.')}@${room}.teneral`,
    summary: `${item.unit}: ${withAmount(item)}`,
    description: lineOf(item, civil),
    location: item.place,
    when: {from, to: from + minutesMs(item.minutes)},
  };
}

/** "C1 feed 18 larvae (at the latest Fri 12 June 21:50; A. Keeper). Care: …" */
function lineOf({unit, latest, who, caution, ...what}: PlannedItem, civil: CareInput['civil']): string {
  const by = who === null ? '' : `; ${who}`;
  return `${unit} ${withAmount(what)} (at the latest ${dateWords(latest, civil)}${by})${caution === null ? '' : `. Care: ${caution}`}`;
}

/** Whole days from one animal in twenty to nineteen in twenty. */
function emergenceEvents({state, emergence, civil, now}: CareInput, room: string): CalendarEvent[] {
  return [...emergence].flatMap(([code, {p05, p95}]) => {
    if (p05 === null || p95 === null || p95 < now || !state.lots.has(code)) return [];
    const unit = state.lots.get(code)!.stays.at(-1)?.unit ?? '';
    return [
      {
        uid: `adults.${code}@${room}.teneral`,
        summary: `adults expected: ${code} in ${unit}`,
        description: 'Nine in ten of its animals are expected to emerge within these days.',
        location: unit,
        when: {firstDay: civil.dayOf(p05), lastDay: civil.dayOf(p95)},
      },
    ];
  });
}

const SHORTEST_MINUTES = 5;

function minutesMs(minutes: number): number {
  return Math.max(SHORTEST_MINUTES, Math.ceil(minutes)) * 60_000;
}

function slug(text: string): string {
  return text.toLowerCase().replaceAll(/[^\p{L}\p{N}]+/gu, '-');
}
