// Which of several rules for the same task is the nearest to a lot.
import type {Stage} from '../records/stage.ts';
import type {Rule} from '../records/state.ts';
import {grouped} from './grouped.ts';
import type {Groups} from './groups.ts';
import {isStage} from './stages.ts';
import {hasStartCode} from './start-rules.ts';
import {daysAtReference} from './window.ts';

/** A lot as rules see it. */
export interface Housed extends Groups {
  readonly lot: string;
  readonly unit: string;
  readonly type: 'cage' | 'aquarium' | 'emergence-box';
  /** The stages its animals were last seen in; none where they are hidden. */
  readonly stages: readonly Stage[];
}

/** For each task, the nearest of the rules that fit a lot; a task whose nearest rule is switched off is left out. */
export function nearestRules(rules: readonly Rule[], housed: Housed): readonly Rule[] {
  return [...nearestByTask(rules, housed).values()].filter(({off}) => !off);
}

/**
 * The same for lot after lot. Rules for many are held against each kind of lot once, those for one lot or one unit only
 * against that: a large room has hundreds of lots and a thousand rules, few of which concern each other.
 */
export function nearestFinder(rules: readonly Rule[]): (housed: Housed) => readonly Rule[] {
  const forMany = rules.filter(({for: {lot, unit}}) => lot === undefined && unit === undefined);
  const forLot = grouped(rules, ({for: {lot}}) => lot);
  const forUnit = grouped(rules, ({for: {lot, unit}}) => (lot === undefined ? unit : undefined));
  const ofKinds = new Map<string, readonly Rule[]>();
  return housed => {
    const kind = kindOf(housed);
    let general = ofKinds.get(kind);
    if (general === undefined) {
      general = [...nearestByTask(forMany, housed).values()];
      ofKinds.set(kind, general);
    }
    const own = nearestByTask(
      [...(forLot.get(housed.lot) ?? []), ...(forUnit.get(housed.unit) ?? [])],
      housed,
    );
    const nearest: Rule[] = [];
    for (const rule of general) {
      const nearer = own.get(rule.task);
      if (nearer !== undefined && compareNearness(nearer, rule, housed) < 0) continue;
      own.delete(rule.task);
      if (!rule.off) nearest.push(rule);
    }
    for (const rule of own.values()) if (!rule.off) nearest.push(rule);
    return nearest;
  };
}

/** What rules for many can tell apart. */
function kindOf({type, profiles, groups, stages}: Housed): string {
  return [type, profiles.join(), groups.join(), stages.join()].join(' ');
}

/** Those switched off too. */
function nearestByTask(rules: readonly Rule[], housed: Housed): Map<string, Rule> {
  const nearest = new Map<string, Rule>();
  for (const rule of rules) {
    if (!fits(rule, housed)) continue;
    const other = nearest.get(rule.task);
    if (other === undefined || compareNearness(rule, other, housed) < 0) nearest.set(rule.task, rule);
  }
  return nearest;
}

/** Everything that the rule names fits the lot. */
export function fits({for: whom}: Rule, housed: Housed): boolean {
  return (
    (whom.type === undefined || whom.type === housed.type) &&
    (whom.unit === undefined || whom.unit === housed.unit) &&
    (whom.lot === undefined || whom.lot === housed.lot) &&
    (whom.profile === undefined || housed.profiles.includes(whom.profile)) &&
    (whom.group === undefined || housed.groups.includes(whom.group)) &&
    (whom.stages === undefined ||
      whom.stages.some(named => housed.stages.some(stage => isStage(stage, named))))
  );
}

/**
 * Negative when `a` is nearer. What the room wrote under codes of its own comes before every start value. Then lot
 * before unit, profile, group, type; then one for these stages before one for all; then the nearer group; then the
 * shorter interval, so that a lot of several stages gets what the most demanding one needs.
 */
function compareNearness(a: Rule, b: Rule, housed: Housed): number {
  return (
    Number(hasStartCode(a)) - Number(hasStartCode(b)) ||
    nearnessOf(b) - nearnessOf(a) ||
    Number(b.for.stages !== undefined) - Number(a.for.stages !== undefined) ||
    groupPlace(a, housed) - groupPlace(b, housed) ||
    intervalDays(a) - intervalDays(b) ||
    (a.code < b.code ? -1 : 1)
  );
}

function nearnessOf({for: {lot, unit, profile, group, type}}: Rule): number {
  if (lot !== undefined) return 5;
  if (unit !== undefined) return 4;
  if (profile !== undefined) return 3;
  if (group !== undefined) return 2;
  return type === undefined ? 0 : 1;
}

function groupPlace({for: {profile, group}}: Rule, {profiles, groups}: Housed): number {
  if (profile !== undefined) return profiles.indexOf(profile);
  return group === undefined ? 0 : groups.indexOf(group);
}

/** In days, a degree-day interval as at 20 °C; only to tell the shorter of two. */
function intervalDays({every}: Rule): number {
  return 'days' in every ? every.days : daysAtReference(every);
}
