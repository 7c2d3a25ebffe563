// What profiles say is done otherwise for their animals, as start values: nearer than those of a group.
import type {Profile} from '../records/schema/index.ts';
import type {Rule} from '../records/state.ts';
import {forcedAnswers} from './observations.ts';

const MINUTES = 3;

const made = new WeakMap<Profile, readonly Rule[]>();
const asShipped = new WeakSet<Rule>();

/** One rule for each care of each profile, coded by task and profile: `feed-adalia-bipunctata`. */
export function profileRules(profiles: Iterable<Profile>): Rule[] {
  return [...profiles].flatMap(profile => {
    let rules = made.get(profile);
    if (rules === undefined) {
      rules = rulesOf(profile);
      made.set(profile, rules);
      for (const rule of rules) asShipped.add(rule);
    }
    return rules;
  });
}

/** The rule is one that a profile brings, or has taken its place. */
export function hasProfileCode({code, task, for: {profile}}: Rule): boolean {
  return profile !== undefined && code === codeOf(task, profile);
}

/** The rule is one that a profile brings, not written by the room. */
export function isProfileRule(rule: Rule): boolean {
  return asShipped.has(rule);
}

function codeOf(task: string, profile: string): string {
  return `${task}-${profile}`;
}

function rulesOf({profile, care = [], sources}: Profile): Rule[] {
  const cited = (id: string) => sources.find(each => each.id === id)?.citation ?? id;
  return care.map(({task, stages, everyDays, earliestDays, latestDays, harm, caution, source, ...more}) => ({
    code: codeOf(task, profile),
    task,
    for: {profile, stages},
    every: {days: everyDays},
    amount: more.amount,
    earliestDays,
    latestDays,
    harm,
    observe: [...forcedAnswers(task)],
    caution,
    minutes: MINUTES,
    source: [source, ...(more.amountSource === undefined ? [] : [more.amountSource])].map(cited).join('; '),
    off: false,
  }));
}
