// The care list of a day: tasks in walking order, and what is amiss.
import type {Alert} from '../care/alert.ts';
import {alertsOf} from '../care/alerts.ts';
import {openTimeOf} from '../care/calendar.ts';
import {type Who, whoTakes} from '../care/people.ts';
import {type Round, roundOf} from '../care/round.ts';
import {type Shortage, shortages} from '../care/shortage.ts';
import type {CareInput, Task} from '../care/task.ts';
import {careTasks} from '../care/tasks.ts';
import type {Day} from '../records/civil.ts';
import type {Desk} from './desk.ts';
import {candidateProfiles, expectations} from './expectations.ts';
import {factsOf} from './facts.ts';
import {keepClock} from './room-clock.ts';
import {warmthOf} from './warmth.ts';

export interface Today extends Round {
  readonly day: Day;
  readonly alerts: readonly Alert[];
  /** Who takes what, by the id of the task. */
  readonly who: ReadonlyMap<string, Who>;
  /** Whose work does not fit into the minutes that they have. */
  readonly shortages: readonly Shortage[];
}

type DayInput = CareInput & {readonly day: Day};

/** @param day the day asked about; default: today */
export async function today(desk: Desk, day?: Day): Promise<Today> {
  return todayFrom(await careInput(desk, day), desk);
}

/** The list of the day that the input was gathered for. */
export async function todayFrom(input: DayInput, desk: Desk): Promise<Today> {
  const round = roundOf(input);
  const who = whoTakes(
    round.tasks.filter(({state}) => state !== 'done'),
    desk.civil.weekdayOf(input.day),
    desk.state.people.values(),
  );
  const taker = new Map([...who].map(([{id}, name]) => [id, name]));
  const {civil, state, now} = input;
  const nextDay = civil.at(civil.addDays(input.day, 1), '00:00');
  const next = openTimeOf(state.calendar, civil).nextRound(nextDay);
  return {
    day: input.day,
    ...round,
    shortages: shortages(
      [...who.keys()],
      task => taker.get(task.id) ?? null,
      state.people.values(),
      now,
      next,
    ),
    who: taker,
    alerts: alertsOf(input, await factsOf(desk)),
  };
}

/** Every task as of now, however far off. */
export async function allTasks(desk: Desk): Promise<Task[]> {
  return careTasks(await careInput(desk));
}

/** What the care list is worked out from. */
export async function careInput(desk: Desk, day: Day = desk.civil.dayOf(desk.now)): Promise<DayInput> {
  const {state, civil, now} = desk;
  const profiles = await candidateProfiles(desk);
  const emergence = await expectations(desk, profiles);
  await keepClock(desk);
  return {state, civil, now, day, profiles, emergence, instantAfterDegreeDays: await warmthOf(desk)};
}
