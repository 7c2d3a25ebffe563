// The care list as a sheet for the door, of today or of several days.
import {extname} from 'node:path';
import {amountOf} from '../care/amounts.ts';
import {grouped} from '../care/grouped.ts';
import {observationOf} from '../care/observations.ts';
import {whoTakes} from '../care/people.ts';
import {minutesOf} from '../care/time-needed.ts';
import {titleOf, withAmount} from '../care/titles.ts';
import type {Visit} from '../care/visits.ts';
import {shelfOf} from '../care/walking-order.ts';
import {dateWords, minuteWords, timeWords} from '../care/when-words.ts';
import type {DoorDay, DoorSheet} from '../exchange/door-sheet/door-sheet.ts';
import {doorSheetText} from '../exchange/door-sheet/text.ts';
import {writeOutput} from '../exchange/output-file.ts';
import {returnWords, unitsByTask} from '../exchange/pictures/agenda.ts';
import {dayWords} from '../exchange/time-words.ts';
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {plannedDays, refuseUnknown} from './ahead.ts';
import type {Desk} from './desk.ts';
import {careInput, type Today, todayFrom} from './today.ts';

export interface DoorWishes {
  /** From today on; the first day holds what is late too. */
  readonly days: number;
  readonly who?: string | undefined;
}

/** @returns pages of paper; null for text. @throws Refusal where the name ends otherwise than .pdf or .txt */
export async function writeDoorSheet(desk: Desk, path: string, wishes: DoorWishes): Promise<number | null> {
  const ending = extname(path).toLowerCase();
  if (ending !== '.pdf' && ending !== '.txt')
    throw new Refusal('the file is neither a PDF nor text', path, 'Let its name end in .pdf or .txt.');
  const sheet = await doorSheet(desk, wishes);
  if (ending === '.txt') {
    await writeOutput([{path, content: doorSheetText(sheet)}], async () => undefined);
    return null;
  }
  // Loaded only now: it is large.
  const {doorSheetPdf} = await import('../exchange/door-sheet/pdf.ts');
  const {bytes, pages} = await doorSheetPdf(sheet, desk.now);
  await writeOutput([{path, content: bytes}], async () => undefined);
  return pages;
}

export async function doorSheet(desk: Desk, {days, who}: DoorWishes): Promise<DoorSheet> {
  refuseUnknown(who, [...desk.state.people.values()]);
  const cautions = new Map<string, number>();
  const input = await careInput(desk);
  const plan = plannedDays(input, days, who);
  const first = todaysPart(await todayFrom(input, desk), desk, plan.returns, who, cautions);
  const later = plan.days.slice(1);
  return {
    title: `${desk.room.name}: care${who === undefined ? '' : ` for ${who}`}`,
    days: [
      first,
      ...later.map(({day, items, errands, returns, minutes, open, closed}) => ({
        heading: headingOf(day, desk),
        aside: open ? `${items.length} to do, about ${minuteWords(minutes)}` : (closed ?? 'closed'),
        remarks: [
          ...returns.map(each => `Come back ${returnWords(each, desk.civil)}.`),
          ...(errands.length === 0 ? [] : [`A visit is needed: ${unitsByTask(errands).join('; ')}.`]),
        ],
        shelves: shelvesOf(
          items.filter(({visit}) => !visit),
          day,
          desk,
          cautions,
        ),
      })),
    ],
    cautions: [...cautions.keys()],
  };
}

function todaysPart(
  list: Today,
  desk: Desk,
  returns: readonly Visit[],
  who: string | undefined,
  cautions: Map<string, number>,
): DoorDay {
  const tasks = list.places
    .flatMap(place => place.tasks)
    .filter(({state}) => state !== 'done')
    .map(task => ({...task, who: list.who.get(task.id) ?? null, waits: task.state === 'early'}))
    .filter(task => who === undefined || task.who === who);
  const toDo = tasks.filter(({state}) => state !== 'early');
  const minutes = toDo.reduce((sum, task) => sum + task.minutes, 0);
  return {
    heading: headingOf(list.day, desk),
    aside: `${toDo.length} to do, about ${minuteWords(minutes)}`,
    remarks: list.alerts.map(({what, mend}) => `${what}. ${mend}`),
    shelves: shelvesOf([...tasks, ...againToday(returns, list.day, who, desk)], list.day, desk, cautions),
  };
}

/** What somebody has to come back for today: its own box to tick, beside the one of the round. */
function againToday(returns: readonly Visit[], day: Day, who: string | undefined, {civil, state}: Desk) {
  const again = returns
    .filter(({from}) => civil.dayOf(from) === day)
    .flatMap(({from, to, jobs}) =>
      jobs.map(job => ({
        unit: job.unit.code,
        place: job.unit.place,
        amount: amountOf(job),
        title: `again, not before ${timeWords(from, civil)}: ${titleOf(job)}`,
        latest: to,
        observe: job.rule.observe,
        caution: job.rule.caution ?? null,
        minutes: minutesOf(job),
      })),
    );
  const taken = whoTakes(again, civil.weekdayOf(day), state.people.values());
  return again
    .map(item => ({...item, who: taken.get(item) ?? null}))
    .filter(item => who === undefined || item.who === who);
}

interface Listed {
  readonly unit: string;
  readonly title: string;
  readonly amount: string | null;
  readonly place: string;
  readonly latest: Instant;
  readonly observe: readonly string[];
  readonly caution: string | null;
  readonly who: string | null;
  /** Worth doing on the way, but not due. */
  readonly waits?: boolean;
}

/** @param cautions gathers each caution under its number */
function shelvesOf(items: readonly Listed[], day: Day, {civil, now}: Desk, cautions: Map<string, number>) {
  return [...grouped(items, ({place}) => shelfOf(place))].map(([place, alike]) => {
    const names = [...new Set(alike.map(({who}) => who))];
    return {
      place,
      who: names.length === 1 ? (names[0] ?? undefined) : undefined,
      rows: alike.map(({unit, title, amount, latest, observe, caution, waits}) => ({
        unit,
        what: withAmount({title, amount}),
        until:
          latest < now
            ? 'late'
            : `${waits === true ? 'may wait, by' : 'by'} ${untilWords(latest, civil, day)}`,
        ask: observe.map(key => observationOf(key).label),
        caution: caution === null ? undefined : numberOf(caution, cautions),
      })),
    };
  });
}

/** "09:10" on the day of the sheet, else "Mon 15 June 09:50". */
function untilWords(at: Instant, civil: Civil, day: Day): string {
  return civil.dayOf(at) === day ? timeWords(at, civil) : dateWords(at, civil);
}

function numberOf(caution: string, cautions: Map<string, number>): number {
  const number = cautions.get(caution) ?? cautions.size + 1;
  cautions.set(caution, number);
  return number;
}

/** "today, Fri 12 June" is of little use on paper that hangs for days: the date alone. */
function headingOf(day: string, {civil, now}: Desk): string {
  const words = dayWords(day, civil, now);
  return /\d/.test(words) ? words : dayWords(day, civil, now + 30 * 86_400_000);
}
