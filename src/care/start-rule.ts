// One start value: a rule that holds until the room says otherwise.
import type {Stage} from '../records/stage.ts';
import type {Rule} from '../records/state.ts';
import {forcedAnswers} from './observations.ts';

export type UnitType = NonNullable<Rule['for']['type']>;

/** In days: the soonest, the wanted, the longest interval. */
export type Days = readonly [earliest: number, target: number, latest: number];

export interface StartValue {
  readonly days: Days;
  readonly harm?: Rule['harm'];
  readonly minutes?: number;
  readonly caution?: string;
  /** Where the figures come from; common practice where not given. */
  readonly source?: string;
  readonly stages?: readonly Stage[];
  /** Groups by profile code, by family or order, or by collecting method; one rule each. */
  readonly groups?: readonly string[];
  /** What tells the code from another of the same task and group, such as `late`. */
  readonly suffix?: string;
  /** What makes it needed, in place of an interval. */
  readonly when?: Rule['when'];
  readonly amount?: Rule['amount'];
  /** Not to be done at all for these animals. */
  readonly off?: boolean;
}

const PRACTICE = 'common practice, no source';

/** The rules of one start value: one for each of its groups, or one for the type. Codes: `feed-cage`, `feed-lepidoptera-late`. */
export function startRules(task: string, type: UnitType | undefined, value: StartValue): Rule[] {
  const {days, harm = 'medium', minutes = 3, caution, stages, groups, suffix, off = false} = value;
  const [earliestDays, everyDays, latestDays] = days;
  return (groups ?? [undefined]).map(group => ({
    code: [task, group ?? type, suffix].filter(part => part !== undefined).join('-'),
    task,
    for: {type, group, stages: stages === undefined ? undefined : [...stages]},
    every: {days: everyDays},
    when: value.when,
    amount: value.amount,
    earliestDays,
    latestDays,
    harm,
    observe: [...forcedAnswers(task)],
    caution,
    minutes,
    source: value.source ?? PRACTICE,
    off,
  }));
}
