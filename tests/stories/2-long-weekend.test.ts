// A long weekend as the program tells it: what is fed beforehand, the one visit that is left, and what heat makes of it.
// Everything is invented; "every two days, never over three" and shorter limits in heat are common practice, no source.
// The expected instants are those of the feeding and so many hours; in heat × (20 − T0) ÷ (T − T0).
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, said, sample} from './story-room.ts';

const stories = [
  {
    ...{closed: ['2031-05-24', '2031-05-26'], evening: 'fri', hours: {every: 48, soonest: 24, latest: 72}},
    ...{fedEarly: '2031-05-22T09:00', lastRound: '2031-05-23T16:30', warmC: 26, lower: 8, degreeDays: 24},
    when: 'between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5)',
    visit:
      'closed Sat 24 May to Mon 26 May (long weekend), and a visit is needed: between Sat 24 May 16:30 and Mon 26 May 16:30 (feed A3, A5); cost: 1 visit, 2 units, about 6 min',
    // 48 h after Friday 16:30 at the latest, and no more than 48 h before Tuesday 09:00.
    inHeat: 'and a visit is needed: on Sun 25 May, 09:00 to 16:30 (feed A3, A5)',
    visited: '2031-05-25T16:00',
    next: '2031-05-27T09:00',
  },
  {
    ...{closed: ['2031-04-18', '2031-04-21'], evening: 'thu', hours: {every: 60, soonest: 30, latest: 90}},
    ...{fedEarly: '2031-04-16T09:00', lastRound: '2031-04-17T16:30', warmC: 24, lower: 8, degreeDays: 30},
    when: 'between Fri 18 Apr 22:30 and Mon 21 Apr 10:30 (feed A3, A5)',
    visit:
      'closed Fri 18 Apr to Mon 21 Apr (long weekend), and a visit is needed: between Fri 18 Apr 22:30 and Mon 21 Apr 10:30 (feed A3, A5); cost: 1 visit, 2 units, about 6 min',
    // 90 × 12 ÷ 16 = 67.5 h after Thursday 16:30, and before Tuesday 09:00.
    inHeat: 'and a visit is needed: between Sat 19 Apr 13:30 and Sun 20 Apr 12:00 (feed A3, A5)',
    visited: '2031-04-20T11:00',
    next: '2031-04-22T09:00',
  },
];

interface Task {
  readonly task: string;
  readonly lot: string | null;
  readonly target: string;
  readonly latest: string;
  readonly state: string;
  readonly why: string;
}

describe.each(stories)('a room closed from $closed.0 to $closed.1, with food every $hours.every h', story => {
  const {closed, evening, hours, fedEarly, lastRound, warmC, lower, degreeDays, next} = story;
  const morning = ['09:00-12:00'];
  const open = {mon: morning, tue: morning, wed: morning, thu: morning, fri: morning, sat: [], sun: []};
  const furnished = (every: object) => {
    const room = newRoom();
    applied(room, fedEarly, [
      {
        ...{
          record: 'calendar',
          at: '2031-01-01T00:00',
          open: {...open, [evening]: [...morning, '16:30-17:30']},
        },
        closed: [{from: closed[0], to: closed[1], why: 'long weekend'}],
      },
      sample('S1', '2031-04-01'),
      ...['3', '5'].flatMap(shelf => [
        {
          ...{record: 'unit', code: `A${shelf}`, type: 'cage', place: `rack A/${shelf}`},
          setPoints: {constant: 20},
        },
        {
          ...{record: 'lot', code: `L${shelf}`, sample: 'S1', unit: `A${shelf}`, at: '2031-04-10T09:00'},
          stages: {larva: 10},
        },
        {record: 'rule', code: `feed-L${shelf}`, task: 'feed', for: {lot: `L${shelf}`}, ...every},
        // Only the feeding is of interest here.
        ...['clean', 'moisten'].map(task => ({
          ...{record: 'rule', code: `no-${task}-${shelf}`, task, for: {lot: `L${shelf}`}},
          ...{every: {days: 1}, off: true},
        })),
        {record: 'check', lot: `L${shelf}`, at: fedEarly},
      ]),
    ]);
    return room;
  };
  const days = {
    every: {days: hours.every / 24},
    earliestDays: hours.soonest / 24,
    latestDays: hours.latest / 24,
  };
  const fed = (lot: string, at: string) => ({record: 'care', task: 'feed', lot, at, seen: {}});
  const later = (at: string, after: number) => daysLater(at, after / 24).slice(0, 16);
  const soonAfter = later(lastRound, 0.5);
  /** The next feeding, on the list of the day on which it is due. */
  const feeding = (room: ReturnType<typeof newRoom>, now: string, lot: string, due: string): Task => {
    const {tasks} = room.ask<{tasks: Task[]}>(now, 'today', '--on', due.slice(0, 10));
    return tasks.filter(task => task.task === 'feed' && task.lot === lot && task.state !== 'done').at(-1)!;
  };

  const visitsAsked = (where: ReturnType<typeof newRoom>, now: string) =>
    where
      .ask<{alerts: {id: string}[]}>(now, 'today')
      .alerts.flatMap(({id}) => (id.startsWith('visit:') ? [id] : []));

  const room = furnished(days);
  applied(room, soonAfter, [fed('L5', fedEarly), fed('L3', lastRound)]);

  it('says when each is due and until when it can wait: the round after the closed days is too late', () => {
    const {target, latest} = feeding(room, soonAfter, 'L3', later(lastRound, hours.every));
    expect([target.slice(0, 16), latest.slice(0, 16)]).toEqual([
      later(lastRound, hours.every),
      later(lastRound, hours.latest),
    ]);
    expect(later(lastRound, hours.latest) < next).toBe(true);
  });

  it('proposes to feed the other too on the last round before, long enough after its last food', () => {
    const task = feeding(room, later(lastRound, -6), 'L5', lastRound);
    expect(task.state).toBe('due');
    expect([task.target.slice(0, 16), task.latest.slice(0, 16)]).toEqual([
      later(fedEarly, hours.every),
      later(fedEarly, hours.latest),
    ]);
    expect(task.why).toContain('brought forward');
    expect((Date.parse(`${lastRound}Z`) - Date.parse(`${fedEarly}Z`)) / 3_600_000).toBeGreaterThanOrEqual(
      hours.soonest,
    );
  });

  it('then asks for one visit to both units, the whole cost of the closed days', () => {
    applied(room, soonAfter, [fed('L5', lastRound)]);
    expect(said(room, soonAfter, 'today')).toContain(story.visit);
    expect(visitsAsked(room, soonAfter)).toContain(`visit:${closed[0]}`);
  });

  it('says the same cost to whoever asks whether it can wait until the room opens again', () => {
    const {canWait, visits} = room.ask<{canWait: boolean; visits: {units: string[]; minutes: number}[]}>(
      soonAfter,
      'wait',
    );
    expect(canWait).toBe(false);
    expect(visits.map(({units, minutes}) => [units, minutes])).toEqual([[['A3', 'A5'], 6]]);
    expect(said(room, soonAfter, 'wait')).toContain(`Cost: 1 visit, 2 units, about 6 min: ${story.when}.`);
  });

  it('wants the visit sooner in heat, and late enough that the round after is in time again', () => {
    const warm = furnished({every: {degreeDays, lower}});
    applied(warm, soonAfter, [fed('L3', lastRound), fed('L5', lastRound)]);
    expect(said(warm, soonAfter, 'today')).toContain(story.visit);
    said(warm, soonAfter, 'unit', 'A3', '--hold', String(warmC), '--at', lastRound);
    said(warm, soonAfter, 'unit', 'A5', '--hold', String(warmC), '--at', lastRound);
    const shorter = (20 - lower) / (warmC - lower);
    const {target, latest} = feeding(warm, soonAfter, 'L3', later(lastRound, hours.every * shorter));
    expect([target.slice(0, 16), latest.slice(0, 16)]).toEqual([
      later(lastRound, hours.every * shorter),
      later(lastRound, hours.latest * shorter),
    ]);
    expect(said(warm, soonAfter, 'today')).toContain(story.inHeat);
    const {visited} = story;
    applied(warm, visited, [fed('L3', visited), fed('L5', visited)]);
    expect(visitsAsked(warm, later(visited, 0.1))).not.toContain(`visit:${closed[0]}`);
    expect(
      feeding(warm, later(visited, 0.1), 'L3', later(visited, hours.every * shorter)).latest.slice(0, 16) >=
        next,
    ).toBe(true);
  });

  it('is safe without another visit once that one was made', () => {
    const {visited} = story;
    applied(room, visited, [fed('L3', visited), fed('L5', visited)]);
    expect(visitsAsked(room, later(visited, 0.1))).not.toContain(`visit:${closed[0]}`);
  });
});
