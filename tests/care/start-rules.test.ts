import {describe, expect, it} from 'vitest';
import {forcedAnswers} from '../../src/care/observations.ts';
import {allStartRules, rulesInForce} from '../../src/care/start-rules.ts';
import {isFinishing} from '../../src/care/subjects.ts';
import {parseRecord} from '../../src/records/schema/index.ts';
import type {Rule} from '../../src/records/state.ts';

const own = (code: string, more: Partial<Rule> = {}): [string, Rule] => [
  code,
  {code, task: 'feed', for: {}, every: {days: 5}, harm: 'low', observe: [], off: false, ...more},
];

describe('the start values', () => {
  it('are rules as a room could write them itself', () => {
    for (const rule of allStartRules)
      expect(() => parseRecord({record: 'rule', ...rule}, rule.code)).not.toThrow();
  });

  it('have a code each', () => {
    expect(new Set(allStartRules.map(({code}) => code)).size).toBe(allStartRules.length);
  });

  it('say where their figures come from, and how early and how late a task may be', () => {
    for (const {code, source, every, earliestDays, latestDays} of allStartRules) {
      expect(source, code).toMatch(/common practice, no source|seen\)|from memory\)/);
      const days = 'days' in every ? every.days : Number.NaN;
      expect(earliestDays! <= days && days <= latestDays!, code).toBe(true);
    }
  });

  it('ask what must be answered for their task', () => {
    for (const {code, task, observe} of allStartRules) expect(observe, code).toEqual(forcedAnswers(task));
  });

  it('warn where work can hurt: hands in water, waste, boxes opened', () => {
    const unwarned = allStartRules.filter(
      rule =>
        !rule.off &&
        ['change-water', 'freeze-waste', 'clean-out'].includes(rule.task) &&
        rule.caution === undefined,
    );
    expect(unwarned).toEqual([]);
  });

  it('cover water, air, food, moisture, cleaning and looks for the types that need them', () => {
    const general = (type: string) =>
      allStartRules
        .filter(
          rule =>
            rule.for.type === type &&
            rule.when === undefined &&
            rule.for.group === undefined &&
            rule.for.stages === undefined,
        )
        .map(({task}) => task)
        .sort();
    expect(general('cage')).toEqual(['check-cold', 'clean', 'feed', 'look', 'moisten']);
    expect(general('aquarium')).toEqual(['change-water', 'check-air', 'clean', 'feed', 'look', 'top-up']);
    expect(general('emergence-box')).toEqual(['check-cold', 'clean', 'look', 'moisten']);
    expect(allStartRules.filter(isFinishing).map(({task}) => task)).toEqual([
      'label',
      'freeze-waste',
      'clean-out',
      'close',
    ]);
  });
});

describe('rulesInForce(own)', () => {
  it('replaces a start value by the room’s rule of the same code, for the same animals unless it names others', () => {
    const rules = rulesInForce(new Map([own('feed-cage')])).filter(({code}) => code === 'feed-cage');
    expect(rules).toHaveLength(1);
    expect(rules[0]!.every).toEqual({days: 5});
    expect(rules[0]!.for.type).toBe('cage');
    const named = rulesInForce(new Map([own('feed-cage', {for: {unit: 'C1'}})])).find(
      ({code}) => code === 'feed-cage',
    );
    expect(named!.for).toEqual({unit: 'C1'});
  });

  it('takes away a start value that is switched off', () => {
    expect(
      rulesInForce(new Map([own('feed-cage', {off: true})])).some(({code}) => code === 'feed-cage'),
    ).toBe(false);
  });

  it('keeps a rule switched off under a code of its own, so that it can be the nearest', () => {
    expect(
      rulesInForce(new Map([own('no-food', {off: true, for: {lot: 'A'}})])).some(
        ({code}) => code === 'no-food',
      ),
    ).toBe(true);
  });
});
