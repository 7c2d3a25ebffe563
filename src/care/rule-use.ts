// Which rule is the nearest for which lot, and what a rule would have asked for in a time gone by.
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Lot, Rule, Unit} from '../records/state.ts';
import {openTimeOf} from './calendar.ts';
import {groupsOf} from './groups.ts';
import {ledgerOf} from './ledger.ts';
import {type Housed, nearestRules} from './nearest.ts';
import {unitOf} from './occupancy.ts';
import {openMoment} from './open-moment.ts';
import {isLiving, stagesOf} from './stages.ts';
import {allStartRules, hasStartCode, isStartRule, rulesInForce} from './start-rules.ts';
import {isForLot, isWanted} from './subjects.ts';
import type {CareInput} from './task.ts';
import {compareNaturally} from './walking-order.ts';
import {clockOf, windowOf} from './window.ts';

export interface RuleUse {
  readonly rule: Rule;
  /** A start value as it ships, one that the room has replaced, or a rule of the room's own. */
  readonly origin: 'start value' | 'start value, changed' | 'own';
  /** Living lots for which it is the nearest of its task and asks for something. */
  readonly lots: readonly string[];
}

/** Every rule of the room: its own, then the start values; those switched off too. */
export function ruleUses(input: CareInput): RuleUse[] {
  const {state} = input;
  const inForce = rulesInForce(state.rules, input.profiles);
  const used = new Map<Rule, string[]>();
  for (const {lot, unit, housed} of housedLots(input))
    for (const rule of nearestRules(inForce, housed)) {
      if (!isWanted(rule, lot, unit)) continue;
      used.set(rule, [...(used.get(rule) ?? []), lot.code]);
    }
  const shown = new Set(inForce.map(({code}) => code));
  const off = [...state.rules.values()].filter(({code}) => !shown.has(code));
  return [...inForce, ...off].map(rule => ({
    rule,
    origin: isStartRule(rule) ? 'start value' : hasStartCode(rule) ? 'start value, changed' : 'own',
    lots: (used.get(rule) ?? []).sort(compareNaturally),
  }));
}

/** A rule by its code: the room's own, else the start value; undefined where there is none. */
export function ruleOf(code: string, {state}: Pick<CareInput, 'state'>): Rule | undefined {
  return state.rules.get(code) ?? allStartRules.find(rule => rule.code === code);
}

export interface RuleTrial {
  /** The lot, or the unit where it is done for the unit. */
  readonly subject: string;
  readonly unit: string;
  /** When it would have been planned, had it been done each time. */
  readonly asked: readonly Instant[];
  /** When the task was really done. */
  readonly done: readonly Instant[];
  /** The longest time between two of those, from the beginning to now, in days. */
  readonly longestGapDays: number;
  /** The longest that the rule allows, in days, as it came out. */
  readonly latestDays: number;
}

/**
 * What a rule would have asked for from an instant to now, for the living lots that it fits, whatever other rules
 * there are. Lots are taken as they are now.
 */
export function triedRule(rule: Rule, input: CareInput, from: Instant): RuleTrial[] {
  const {state, civil, now, instantAfterDegreeDays} = input;
  const open = openTimeOf(state.calendar, civil);
  const clock = clockOf(civil, instantAfterDegreeDays);
  const ledger = ledgerOf(state);
  const trials = new Map<string, RuleTrial>();
  for (const {lot, unit, housed} of housedLots(input)) {
    if (nearestRules([{...rule, off: false}], housed).length === 0 || !isWanted(rule, lot, unit)) continue;
    const subject = isForLot(rule) ? lot.code : unit.code;
    if (trials.has(subject)) continue;
    const deeds = isForLot(rule) ? ledger.ofLot(rule.task, lot) : ledger.ofUnit(rule.task, unit.code);
    const done = deeds.filter(({skipped, at}) => skipped === undefined && at <= now).map(({at}) => at);
    const begin = Math.max(from, lot.startedAt);
    let last = done.findLast(at => at <= begin) ?? begin;
    const asked: Instant[] = [];
    let latest = 0;
    for (let turn = 0; turn < MOST_TURNS; turn++) {
      const window = windowOf(rule, last, lot.code, clock);
      latest = Math.max(latest, window.latest - window.since);
      const at = Math.max(openMoment(window, open, civil) ?? window.latest, last + 1);
      if (at > now) break;
      if (at >= begin) asked.push(at);
      last = at;
    }
    const within = done.filter(at => at >= begin);
    trials.set(subject, {
      subject,
      unit: unit.code,
      asked,
      done: within,
      longestGapDays: longestGap([done.findLast(at => at < begin) ?? begin, ...within, now]) / MS_PER_DAY,
      latestDays: latest / MS_PER_DAY,
    });
  }
  return [...trials.values()].sort((a, b) => compareNaturally(a.subject, b.subject));
}

const MOST_TURNS = 1000;

function longestGap(times: readonly Instant[]): number {
  return times.reduce((longest, at, i) => (i === 0 ? longest : Math.max(longest, at - times[i - 1]!)), 0);
}

function housedLots({state, profiles}: CareInput): {lot: Lot; unit: Unit; housed: Housed}[] {
  return [...state.lots.values()].flatMap(lot => {
    const unit = isLiving(lot) ? unitOf(lot, state) : undefined;
    if (unit === undefined) return [];
    const groups = groupsOf(lot, profiles, state.samples.get(lot.sample));
    return [
      {
        lot,
        unit,
        housed: {...groups, lot: lot.code, unit: unit.code, type: unit.type, stages: stagesOf(lot)},
      },
    ];
  });
}
