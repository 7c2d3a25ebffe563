// The days ahead: what is to be done on each, by whom, and how long it takes.
import {type AgendaDay, type AgendaItem, agendaOf} from '../care/agenda.ts';
import {openTimeOf} from '../care/calendar.ts';
import {grouped} from '../care/grouped.ts';
import {jobsOf} from '../care/jobs.ts';
import {type Who, whoTakes} from '../care/people.ts';
import type {CareInput} from '../care/task.ts';
import {comingsOf, type Visit} from '../care/visits.ts';
import {compareNaturally} from '../care/walking-order.ts';
import type {Instant} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Desk} from './desk.ts';
import {careInput} from './today.ts';

export interface PlannedItem extends AgendaItem {
  readonly who: Who;
}

export interface PlannedDay extends Omit<AgendaDay, 'items'> {
  readonly items: readonly PlannedItem[];
  /** What somebody has to come for on closed time, in walking order. */
  readonly errands: readonly {readonly task: string; readonly unit: string}[];
  /** When somebody has to come back to the open room, and what for, in order of time. */
  readonly returns: readonly PlannedReturn[];
  /** Minutes by person; what nobody is down for is left out. */
  readonly workload: Readonly<Record<string, number>>;
}

export interface PlannedReturn {
  readonly from: Instant;
  readonly to: Instant;
  readonly errands: readonly {readonly task: string; readonly unit: string}[];
}

export interface Ahead {
  readonly days: readonly PlannedDay[];
  /** What closed days force, in order of time. */
  readonly visits: readonly Visit[];
  /** What no round is in time for, though the room is open, in order of time. */
  readonly returns: readonly Visit[];
}

/** Further ahead than this nothing is planned. */
export const MOST_DAYS = 92;

/**
 * @param days how many, from today on
 * @param who only what this person takes
 */
export async function ahead(desk: Desk, days: number, who?: string): Promise<Ahead> {
  return plannedDays(await careInput(desk), days, who);
}

export function plannedDays(input: CareInput, days: number, who?: string): Ahead {
  if (!Number.isInteger(days) || days < 1 || days > MOST_DAYS)
    throw new Refusal(`${days} days cannot be planned`, '--days', `Ask for 1 to ${MOST_DAYS} whole days.`);
  const {state, civil, now} = input;
  const people = [...state.people.values()];
  refuseUnknown(who, people);
  const open = openTimeOf(state.calendar, civil);
  const end = civil.at(civil.addDays(civil.dayOf(now), days), '00:00');
  const comings = comingsOf(jobsOf(input, open), open, input);
  const visits = comings.visits.filter(({from}) => from < end);
  const returns = comings.returns.filter(({from}) => from < end);
  const visitsOn = grouped(visits, ({to}) => civil.dayOf(to));
  const returnsOn = grouped(returns, ({from}) => civil.dayOf(from));
  const planned = agendaOf(input, days).map(({items, ...day}) => {
    const taken = whoTakes(items, civil.weekdayOf(day.day), people);
    const all = items.map(item => ({...item, who: taken.get(item) ?? null}));
    const shown = who === undefined ? all : all.filter(item => item.who === who);
    return {
      ...day,
      items: shown,
      minutes: shown.reduce((sum, {minutes}) => sum + minutes, 0),
      errands: (visitsOn.get(day.day) ?? []).flatMap(errandsOf),
      returns: (returnsOn.get(day.day) ?? []).map(each => ({
        from: each.from,
        to: each.to,
        errands: errandsOf(each),
      })),
      workload: workloadOf(shown),
    };
  });
  return {visits, returns, days: planned};
}

/** @throws Refusal for a name that nobody in the room has */
export function refuseUnknown(who: string | undefined, people: readonly {readonly name: string}[]): void {
  if (who === undefined || people.some(({name}) => name === who)) return;
  const known = people.map(({name}) => name).join(', ');
  throw new Refusal(
    `nobody here is called "${who}"`,
    '--for',
    known === '' ? 'Write people down with teneral person NAME.' : `Known are ${known}.`,
  );
}

function errandsOf({jobs}: Visit) {
  return jobs.map(({rule: {task}, unit}) => ({task, unit: unit.code, place: unit.place})).sort(onTheWay);
}

function onTheWay(a: {place: string; unit: string}, b: {place: string; unit: string}): number {
  return compareNaturally(a.place, b.place) || compareNaturally(a.unit, b.unit);
}

function workloadOf(items: readonly PlannedItem[]): Record<string, number> {
  const minutes: Record<string, number> = {};
  for (const item of items)
    if (item.who !== null) minutes[item.who] = (minutes[item.who] ?? 0) + item.minutes;
  return minutes;
}
