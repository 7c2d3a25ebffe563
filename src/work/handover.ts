// The note to whoever takes over: what is pressing, what comes before their round, where adults are, what is not to be trusted, and what people wrote.
import {openTimeOf} from '../care/calendar.ts';
import {nextAfterClosing} from '../care/waiting.ts';
import {type Instant, instantOf, MS_PER_DAY} from '../records/entry.ts';
import {openLots} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {type ReadingGap, readingGaps} from './gaps.ts';
import {type Recorded, record} from './record.ts';
import type {Session} from './session.ts';
import {careInput, todayFrom} from './today.ts';

export interface Handover {
  /** Since when: the last time somebody took over, at most a week ago. */
  readonly since: Instant;
  readonly takenOver: {readonly at: Instant; readonly by: string} | null;
  /** The round before which the rest falls due. */
  readonly until: Instant | null;
  /** Late, or limited to before that round. */
  readonly pressing: readonly HandedTask[];
  /** Due before that round, and not pressing. */
  readonly due: readonly HandedTask[];
  /** Units in which adults came out since, with how many. */
  readonly adults: readonly {readonly unit: string; readonly lot: string; readonly count: number}[];
  readonly arrivals: readonly {readonly lot: string; readonly unit: string; readonly at: Instant}[];
  /** Where units with animals were not read since. */
  readonly gaps: readonly ReadingGap[];
  readonly amiss: readonly {readonly id: string; readonly what: string; readonly mend: string}[];
  /** Oldest first. */
  readonly notes: readonly {
    readonly at: Instant;
    readonly by: string;
    readonly about: string | null;
    readonly text: string;
  }[];
}

export interface HandedTask {
  readonly id: string;
  readonly unit: string;
  readonly title: string;
  readonly amount: string | null;
  readonly latest: Instant;
  readonly late: boolean;
}

const LONGEST_DAYS = 7;
const TAKEN_OVER = /^handover:/;

export async function handover(desk: Desk): Promise<Handover> {
  const {state, now} = desk;
  const input = await careInput(desk);
  const list = await todayFrom(input, desk);
  const takenOver = lastTakenOver(desk);
  const since = Math.max(takenOver?.at ?? 0, now - LONGEST_DAYS * MS_PER_DAY);
  const until = nextAfterClosing(openTimeOf(state.calendar, input.civil), input);
  const tasks = list.places
    .flatMap(place => place.tasks)
    .filter(
      ({state: how, target}) => how !== 'done' && (how !== 'early' || (until !== null && target < until)),
    )
    .map(({id, unit, title, amount, latest, state: how}) => ({
      ...{id, unit, title, amount, latest},
      late: how === 'overdue',
    }));
  const isPressing = ({late, latest}: HandedTask) => late || (until !== null && latest < until);
  return {
    since,
    takenOver,
    until,
    pressing: tasks.filter(isPressing),
    due: tasks.filter(task => !isPressing(task)),
    adults: openLots(state).flatMap(({code, sightings, stays}) => {
      const count = sightings.reduce(
        (sum, seen) => (seen.kind === 'emergence' && seen.at >= since ? sum + seen.count : sum),
        0,
      );
      return count === 0 ? [] : [{unit: stays.at(-1)!.unit, lot: code, count}];
    }),
    arrivals: openLots(state)
      .filter(({startedAt}) => startedAt >= since)
      .map(({code, stays, startedAt}) => ({lot: code, unit: stays.at(-1)!.unit, at: startedAt})),
    gaps: await readingGaps(desk, since),
    amiss: list.alerts.map(({id, what, mend}) => ({id, what, mend})),
    notes: state.entries.flatMap(({record: entry, by, recordedAt}) => {
      const at = instantOf(('at' in entry ? entry.at : undefined) ?? recordedAt);
      if (entry.record !== 'note' || entry.text === undefined || at < since) return [];
      return [{at, by, about: entry.about ?? null, text: entry.text}];
    }),
  };
}

function lastTakenOver({state}: Desk): Handover['takenOver'] {
  const last = state.entries.findLast(
    ({record: entry}) => entry.record === 'acknowledge' && TAKEN_OVER.test(entry.alert),
  );
  if (last === undefined || last.record.record !== 'acknowledge') return null;
  return {at: instantOf(last.record.at ?? last.recordedAt), by: last.by};
}

/** Signed: this person has read the note. */
export function takeOver(session: Session, desk: Desk): Promise<Recorded> {
  const day = desk.civil.dayOf(desk.now);
  return record(session, [
    {record: 'acknowledge', alert: `handover:${day}`, done: `taken over by ${session.by}`},
  ]);
}
