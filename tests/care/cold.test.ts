// Lots in the cold: their care is suspended, the cold is checked instead (every 2–4 weeks, common practice, no source).
// Rooms and dates are invented.
import {describe, expect, it} from 'vitest';
import type {Written} from '../records/daybook-of.ts';
import {lot, sample, tasksAt, unit, wall} from './care-of.ts';

const NOW = '2031-02-20T09:00';
const held = (constant: number, from = '2031-01-01T09:00', type = 'emergence-box') =>
  unit('E3', type, {setPoints: {constant}, at: from});
const room = (...units: Written[]) => [sample, ...units, lot('A', 'E3', {pupa: 20}, '2031-01-06T09:00')];
const tasks = (records: readonly Written[], now = NOW) => tasksAt(records, now);
const named = (records: readonly Written[], now = NOW) => tasks(records, now).map(({task}) => task);

describe('pupae in a box held at 4 °C', () => {
  it('are neither moistened nor cleaned nor looked over, but the cold is checked and answered for', () => {
    expect(new Set(named(room(held(4))))).toEqual(new Set(['check-cold', 'bring-out']));
    const check = tasks(room(held(4))).find(({task}) => task === 'check-cold')!;
    expect([wall(check.earliest), wall(check.target), wall(check.latest)]).toEqual([
      '2031-01-16T09:00',
      '2031-01-27T09:00',
      '2031-02-03T09:00',
    ]);
    expect(check.observe).toEqual(['mould', 'condensation', 'coldC']);
  });

  it('are cared for as before once it is warmed, and the cold is checked no more', () => {
    const warmed = named(room(held(4), held(20, '2031-02-18T09:00')));
    expect(warmed).toContain('moisten');
    expect(warmed).toContain('look');
    expect(warmed).not.toContain('check-cold');
  });

  it('are checked first some weeks after the box was made cold, not after they were put into it', () => {
    const cooled = tasks(room(held(20), held(4, '2031-02-18T09:00')));
    const check = cooled.find(({task}) => task === 'check-cold')!;
    expect([check.state, wall(check.target)]).toEqual(['early', '2031-03-11T09:00']);
  });

  it('get what the room wrote for that lot or unit', () => {
    const own = {record: 'rule', code: 'mist', task: 'moisten', every: {days: 30}, at: '2031-01-01T09:00'};
    expect(named([...room(held(4)), {...own, for: {unit: 'E3'}}])).toContain('moisten');
    expect(named([...room(held(4)), {...own, for: {lot: 'A'}}])).toContain('moisten');
    expect(named([...room(held(4)), {...own, for: {type: 'emergence-box'}}])).not.toContain('moisten');
  });
});

describe('nymphs in water held at 5 °C', () => {
  it('live and eat there', () => {
    const water = [
      sample,
      unit('B1', 'aquarium', {setPoints: {constant: 5}}),
      lot('A', 'B1', {nymph: 6}, '2031-01-06T09:00'),
    ];
    expect(named(water)).toContain('feed');
    expect(named(water)).toContain('change-water');
    expect(named(water)).not.toContain('check-cold');
  });
});
