// The rules a room begins with, and those in force once it has written its own.
import type {Profile} from '../records/schema/index.ts';
import type {Rule} from '../records/state.ts';
import {hasProfileCode, isProfileRule, profileRules} from './profile-rules.ts';
import {aquariumRules} from './start-rules-aquarium.ts';
import {cageRules} from './start-rules-cage.ts';
import {emergenceBoxRules} from './start-rules-emergence-box.ts';
import {finishRules} from './start-rules-finish.ts';
import {triggeredRules} from './start-rules-triggered.ts';

/** Every start value, each with where its figures come from. */
export const allStartRules: readonly Rule[] = [
  ...cageRules,
  ...aquariumRules,
  ...emergenceBoxRules,
  ...finishRules,
  ...triggeredRules,
];

const startByCode = new Map(allStartRules.map(rule => [rule.code, rule]));

/**
 * The rules in force, with those that the profiles of the room's lots bring. A rule of the room's own replaces the
 * start value of the same code, and holds for the same animals unless it names others; switched off, it takes the
 * start value away. A rule switched off under a code of its own stays in force: where it is the nearest, the task is
 * not done.
 */
export function rulesInForce(
  own: ReadonlyMap<string, Rule>,
  profiles: ReadonlyMap<string, Profile> = new Map(),
): readonly Rule[] {
  const ofProfiles = profileRules(profiles.values());
  const kept = [...allStartRules, ...ofProfiles].filter(({code}) => !own.has(code));
  const written = [...own.values()].flatMap(rule => {
    const start = startByCode.get(rule.code) ?? ofProfiles.find(({code}) => code === rule.code);
    if (start === undefined) return [rule];
    if (rule.off) return [];
    return [namesNobody(rule) ? {...rule, for: start.for} : rule];
  });
  return [...written, ...kept];
}

/** The rule is a start value, or has taken the place of one. */
export function hasStartCode(rule: Rule): boolean {
  return startByCode.has(rule.code) || hasProfileCode(rule);
}

/** The rule is one of the start values, not written by the room. */
export function isStartRule(rule: Rule): boolean {
  return startByCode.get(rule.code) === rule || isProfileRule(rule);
}

function namesNobody({for: whom}: Rule): boolean {
  return Object.values(whom).every(value => value === undefined);
}
