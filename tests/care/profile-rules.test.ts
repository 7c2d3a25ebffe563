// Care that a profile asks for: a start value nearer than that of a group, and the room's own rules before it.
import {describe, expect, it} from 'vitest';
import {profileRules} from '../../src/care/profile-rules.ts';
import {hasStartCode, isStartRule, rulesInForce} from '../../src/care/start-rules.ts';
import type {Rule} from '../../src/records/state.ts';
import {bundled, bundledCodes} from '../profiles/bundled.ts';

const ladybird = bundled('adalia-bipunctata');
const profiles = new Map([['adalia-bipunctata', ladybird]]);
const own = (changes: Partial<Rule>): ReadonlyMap<string, Rule> => {
  const [start] = profileRules([ladybird]);
  const rule = {...start!, for: {}, source: undefined, ...changes};
  return new Map([[rule.code, rule]]);
};

describe('rules of profiles', () => {
  it('hold for their profile and stages, with where the figures come from', () => {
    expect(profileRules([ladybird])).toMatchObject([
      {
        code: 'feed-adalia-bipunctata',
        task: 'feed',
        for: {profile: 'adalia-bipunctata', stages: ['larva']},
        every: {days: 1},
        source: expect.stringMatching(/common practice/i),
      },
    ]);
  });

  it('are start values: listed as such, and made once', () => {
    const [rule] = profileRules([ladybird]);
    expect(isStartRule(rule!)).toBe(true);
    expect(hasStartCode(rule!)).toBe(true);
    expect(profileRules([ladybird])[0]).toBe(rule);
    expect(rulesInForce(new Map(), profiles)).toContain(rule);
  });

  it('give way to the room’s own of the same code, which keeps their animals', () => {
    const inForce = rulesInForce(own({every: {days: 2}, latestDays: 3}), profiles);
    const feeding = inForce.filter(({code}) => code === 'feed-adalia-bipunctata');
    expect(feeding).toMatchObject([
      {every: {days: 2}, for: {profile: 'adalia-bipunctata', stages: ['larva']}},
    ]);
    expect(isStartRule(feeding[0]!)).toBe(false);
  });

  it('are gone where the room switches them off', () => {
    const inForce = rulesInForce(own({off: true}), profiles);
    expect(inForce.some(({code}) => code === 'feed-adalia-bipunctata')).toBe(false);
  });

  it.each(bundledCodes.filter(code => (bundled(code).care ?? []).length > 0))(
    '%s: no interval is longer than its limit',
    code => {
      for (const {earliestDays, latestDays, every} of profileRules([bundled(code)])) {
        if (!('days' in every)) throw new Error('an interval of a profile is in days');
        expect(earliestDays!).toBeLessThanOrEqual(every.days);
        expect(every.days).toBeLessThanOrEqual(latestDays!);
      }
    },
  );
});
