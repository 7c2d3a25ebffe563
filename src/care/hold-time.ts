// How long an adult of a lot may wait unseen: for the care list, the forecast and whoever asks whether it can wait.
import {MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot, RoomState, Rule} from '../records/state.ts';
import {groupsOf} from './groups.ts';
import {nearestRules} from './nearest.ts';
import {unitOf} from './occupancy.ts';
import {stagesOf} from './stages.ts';
import {isStartRule, rulesInForce} from './start-rules.ts';
import type {EmergenceOutlook} from './task.ts';

type Profiles = ReadonlyMap<string, Profile>;

/** Where no candidate's profile says. Common practice, no source. */
const USUAL_HOURS = 24;

/** By the room's own rule for looks at the lot where there is one, else what its kind bears. */
export function holdHoursOf(lot: Lot, state: RoomState, profiles: Profiles): number {
  const rule = ownLookRule(lot, state, profiles);
  return (rule === undefined ? undefined : ownHoldHours(rule)) ?? kindHoldHours(lot, profiles);
}

/** The same where the rule that is nearest to the lot is known, and what its kind bears may be. */
export function holdHoursBy(
  rule: Rule,
  lot: Lot,
  outlook: EmergenceOutlook | undefined,
  profiles: Profiles,
): number {
  return ownHoldHours(rule) ?? outlook?.holdHours ?? kindHoldHours(lot, profiles);
}

/** What the kind bears: the shortest that any of a lot's candidates does. */
export function kindHoldHours({candidates}: Lot, profiles: Profiles): number {
  const hours = candidates.flatMap(({profile, weight}) =>
    weight > 0 ? (profiles.get(profile)?.adult.holdHours ?? []) : [],
  );
  return hours.length === 0 ? USUAL_HOURS : Math.min(...hours);
}

/**
 * What a rule for looks says of it; undefined where it says nothing. A start value says how often to look without a
 * forecast; a rule of the room's own also with one, shorter or longer than the kind bears.
 */
export function ownHoldHours(rule: Rule): number | undefined {
  return isStartRule(rule) || !('days' in rule.every)
    ? undefined
    : (rule.every.days * MS_PER_DAY) / MS_PER_HOUR;
}

/** The rule that the room wrote for looks at a lot, where it is the nearest. */
function ownLookRule(lot: Lot, state: RoomState, profiles: Profiles): Rule | undefined {
  const own = new Map([...state.rules].filter(([, {task}]) => task === 'look'));
  const unit = own.size === 0 ? undefined : unitOf(lot, state);
  if (unit === undefined) return undefined;
  const looks = rulesInForce(own, profiles).filter(({task}) => task === 'look');
  const groups = groupsOf(lot, profiles, state.samples.get(lot.sample));
  const {code, type} = unit;
  return nearestRules(looks, {...groups, lot: lot.code, unit: code, type, stages: stagesOf(lot)})[0];
}
