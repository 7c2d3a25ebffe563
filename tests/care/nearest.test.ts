import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {groupsOf} from '../../src/care/groups.ts';
import {type Housed, nearestFinder, nearestRules} from '../../src/care/nearest.ts';
import {allStartRules} from '../../src/care/start-rules.ts';
import type {Rule} from '../../src/records/state.ts';
import {careInput, lot, profile, sample, unit} from './care-of.ts';

const housed: Housed = {
  lot: 'A',
  unit: 'C1',
  type: 'cage',
  profiles: ['pieris-rapae', 'coccinellidae'],
  groups: ['pieris-rapae', 'pieridae', 'lepidoptera', 'coccinellidae', 'coleoptera', 'search'],
  stages: ['larva-3', 'larva-5'],
};
const rule = (code: string, whom: Rule['for'], more: Partial<Rule> = {}): Rule => ({
  code,
  task: 'feed',
  for: whom,
  every: {days: 2},
  harm: 'medium',
  observe: [],
  off: false,
  ...more,
});
const nearest = (...rules: Rule[]) => nearestRules(rules, housed).find(({task}) => task === 'feed')?.code;

describe('nearestRules(rules, lot)', () => {
  it('takes the lot before the unit, the unit before the profile, then the group, then the type', () => {
    const rules = [
      rule('any', {}),
      rule('type', {type: 'cage'}),
      rule('group', {group: 'lepidoptera'}),
      rule('profile', {profile: 'pieris-rapae'}),
      rule('unit', {unit: 'C1'}),
      rule('lot', {lot: 'A'}),
    ];
    const won = rules.map((_, i) => nearest(...rules.slice(0, i + 1)));
    expect(won).toEqual(['any', 'type', 'group', 'profile', 'unit', 'lot']);
  });

  it('leaves out a rule of which anything named does not fit', () => {
    expect(nearest(rule('other', {lot: 'A', type: 'aquarium'}), rule('type', {type: 'cage'}))).toBe('type');
    expect(nearest(rule('other', {group: 'culicidae'}))).toBeUndefined();
    expect(nearest(rule('pupae', {lot: 'A', stages: ['pupa']}))).toBeUndefined();
  });

  it('takes a rule for these stages before one of the same nearness for all, and no farther', () => {
    expect(
      nearest(rule('all', {group: 'lepidoptera'}), rule('late', {group: 'lepidoptera', stages: ['larva-5']})),
    ).toBe('late');
    expect(nearest(rule('all', {lot: 'A'}), rule('late', {type: 'cage', stages: ['larva-5']}))).toBe('all');
  });

  it('reads larva as any instar', () => {
    expect(nearest(rule('larvae', {stages: ['larva']}))).toBe('larvae');
    expect(nearest(rule('tenth', {stages: ['larva-1']}))).toBeUndefined();
  });

  it('takes the group of the heaviest candidate first, its family before its order', () => {
    expect(
      nearest(
        rule('beetle', {group: 'coccinellidae'}),
        rule('order', {group: 'lepidoptera'}),
        rule('family', {group: 'pieridae'}),
      ),
    ).toBe('family');
  });

  it('takes what the room wrote under a code of its own before any start value, however near that is', () => {
    const start = allStartRules.find(({code}) => code === 'feed-lepidoptera-late')!;
    expect(nearest(start, rule('mine', {type: 'cage'}, {every: {days: 9}}))).toBe('mine');
  });

  it('leaves a rule that took the place of a start value where that stood', () => {
    const start = allStartRules.find(({code}) => code === 'feed-lepidoptera-late')!;
    expect(nearest(start, rule('feed-cage', {type: 'cage'}, {every: {days: 9}}))).toBe(
      'feed-lepidoptera-late',
    );
  });

  it('takes the shorter of two intervals', () => {
    expect(nearest(rule('slow', {type: 'cage'}, {every: {days: 3}}), rule('fast', {type: 'cage'}))).toBe(
      'fast',
    );
    expect(
      nearest(
        rule('slow', {type: 'cage'}),
        rule('warm', {type: 'cage'}, {every: {degreeDays: 12, lower: 8}}),
      ),
    ).toBe('warm');
  });

  it('asks for nothing where the nearest rule is switched off', () => {
    expect(nearest(rule('type', {type: 'cage'}), rule('not-here', {lot: 'A'}, {off: true}))).toBeUndefined();
  });
});

describe('groupsOf(lot)', () => {
  it('names profiles by weight with their classes from narrow to wide, the taxon as written, and the method', () => {
    const records = [
      sample,
      unit('C1'),
      lot('A', 'C1', {larva: 3}, '2031-05-01T09:00', {
        taxon: 'Pieris',
        candidates: [
          {profile: 'beetles', weight: 0.2},
          {profile: 'whites', weight: 0.8},
        ],
      }),
    ];
    const {state} = careInput(records, '2031-05-02T09:00');
    const profiles = new Map([
      ['whites', profile('whites', {order: 'Lepidoptera', family: 'Pieridae'})],
      ['beetles', profile('beetles', {order: 'Coleoptera'})],
    ]);
    expect(groupsOf(state.lots.get('A')!, profiles, state.samples.get('S1'))).toEqual({
      profiles: ['whites', 'beetles'],
      groups: ['whites', 'pieridae', 'lepidoptera', 'beetles', 'coleoptera', 'pieris', 'search'],
    });
  });
});

describe('nearestFinder(rules)', () => {
  const someOf = <T>(...values: T[]) => fc.option(fc.constantFrom(...values), {nil: undefined});
  const rules = fc
    .array(
      fc.record({
        task: fc.constantFrom('feed', 'clean'),
        whom: fc.record({
          lot: someOf('A', 'B'),
          unit: someOf('C1', 'C2'),
          type: someOf('cage' as const, 'aquarium' as const),
          profile: someOf('pieris-rapae'),
          group: someOf('lepidoptera', 'coleoptera'),
          stages: someOf(['larva'], ['pupa']),
        }),
        off: fc.boolean(),
        days: fc.integer({min: 1, max: 4}),
      }),
      {maxLength: 12},
    )
    .map(list =>
      list.map(({task, whom, off, days}, i) => rule(`rule-${i}`, whom, {task, off, every: {days}})),
    );
  const lots = fc.array(
    fc.record({
      lot: fc.constantFrom('A', 'B', 'C'),
      unit: fc.constantFrom('C1', 'C2', 'C3'),
      type: fc.constantFrom('cage' as const, 'aquarium' as const),
      profiles: fc.subarray(['pieris-rapae']),
      groups: fc.shuffledSubarray(['lepidoptera', 'coleoptera']),
      stages: fc.subarray(['larva-3', 'pupa']),
    }),
    {minLength: 2, maxLength: 8},
  );

  it('finds for lot after lot what is nearest to each by itself', () => {
    fc.assert(
      fc.property(rules, lots, (all, each) => {
        const find = nearestFinder(all);
        for (const one of each) expect(new Set(find(one))).toEqual(new Set(nearestRules(all, one)));
      }),
    );
  });
});
