// A task of the care list, and what the tasks of a room are worked out from.
import type {Civil, Day} from '../records/civil.ts';
import type {Instant} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Stage} from '../records/stage.ts';
import type {RoomState, Rule} from '../records/state.ts';

/**
 * How a task stands on the day asked about. `due`: to be done that day. `overdue`: it should have been done on an
 * earlier day, or its latest instant has passed. `early`: not due yet. `done`: done on that day.
 */
export type TaskState = 'overdue' | 'due' | 'early' | 'done';

export type Harm = Rule['harm'];

/** What does more harm when missed comes first. */
export const harmOrder: Readonly<Record<Harm, number>> = {high: 0, medium: 1, low: 2};

/** How one thing to be done stands: as much as it takes to make a day's list. */
export interface Standing {
  /** Rule, lot or unit, and due day: `feed-cage:26-031-A:2026-06-12`. Codes hold no colon, and a shell needs no quotes. */
  readonly id: string;
  /** `feed`, `clean`, `change-water`, `top-up`, `moisten`, `check-air`, `look`, `inspect`, or a word of the room's own. */
  readonly task: string;
  readonly unit: string;
  readonly place: string;
  /** From when the time runs: when it was last done, else when it first came to be needed. */
  readonly since: Instant;
  /** Sooner is too soon. */
  readonly earliest: Instant;
  /** When the rule wants it, closed days or not. */
  readonly target: Instant;
  /** Later is too late. */
  readonly latest: Instant;
  /** When the room is open for it: at the target, or moved for closed time. Null: only a visit on closed time will do. */
  readonly planned: Instant | null;
  readonly state: TaskState;
  readonly harm: Harm;
  readonly minutes: number;
  /** Given when the state is `done`. */
  readonly done?: {readonly at: Instant; readonly by: string} | undefined;
  /** It could not be done on this day; it stays as due as it was. */
  readonly skipped?: {readonly at: Instant; readonly by: string; readonly why: string} | undefined;
}

/** It is wanted on the day asked about, and not done. */
export function isOpen({state}: Standing): boolean {
  return state === 'due' || state === 'overdue';
}

/** One thing to be done about one lot or one unit, in all that a person needs to do it. */
export interface Task extends Standing {
  /** Code of the rule it follows from. */
  readonly rule: string;
  /** In plain words: "feed 18 larvae", "look for adults: 11 pupae". */
  readonly title: string;
  /** How much it takes: "4 of 12 litres"; null where no rule says. */
  readonly amount: string | null;
  /** The lot it is done for; null when it is done for the unit and all that live in it. */
  readonly lot: string | null;
  /** Every lot it serves. */
  readonly lots: readonly string[];
  /** What must be answered when it is done; see observations.ts. */
  readonly observe: readonly string[];
  readonly caution: string | null;
  /** Whose the dead are that are found while it is done: the only lot there, counted, all in one stage; null else. */
  readonly deadOf: {readonly lot: string; readonly stage: Stage} | null;
  /** Why it stands here, as a sentence: "last fed Tue 16:30; every 2 days, never over 3". */
  why(): string;
}

/** What the forecast of a lot says about looking for adults, to the millisecond. Null: not within the horizon. */
export interface EmergenceOutlook {
  readonly startChecking: Instant | null;
  readonly nextCheck: Instant | null;
  /** Between them nine in ten animals emerge. */
  readonly p05: Instant | null;
  readonly p95: Instant | null;
  /** How long an adult of this kind bears to wait unseen; where not given, as its candidates' profiles say. */
  readonly holdHours?: number | undefined;
}

/**
 * The instant at which a lot has gathered so many degree-days above `lower` (°C) since `from`; null where its
 * temperatures are not known, infinite where it stays too cold for as far as they are.
 */
export type InstantAfterDegreeDays = (
  lot: string,
  from: Instant,
  degreeDays: number,
  lower: number,
) => Instant | null;

export interface CareInput {
  readonly state: RoomState;
  readonly civil: Civil;
  readonly now: Instant;
  /** The day of the list; that of `now` when not given. */
  readonly day?: Day | undefined;
  /** The profiles of the lots' candidates, where known. */
  readonly profiles: ReadonlyMap<string, Profile>;
  /** By lot; a lot without a forecast is left out. */
  readonly emergence: ReadonlyMap<string, EmergenceOutlook>;
  readonly instantAfterDegreeDays: InstantAfterDegreeDays;
}
