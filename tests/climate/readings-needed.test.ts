import {describe, expect, it} from 'vitest';
import {readingsNeeded} from '../../src/climate/readings-needed.ts';
import {days} from './fake-civil.ts';
import {courseInput} from './room.ts';

describe('readingsNeeded', () => {
  it('names the loggers of the units lived in, then those beside them, and no others', () => {
    const input = courseInput({
      from: '2031-05-01 00:00',
      now: '2031-05-10 00:00',
      to: '2031-05-20 00:00',
      units: {
        C1: [
          ['always', {type: 'cage', place: 'rack A/1', logger: 'L1'}],
          ['2031-05-05 00:00', {type: 'cage', place: 'rack A/1', logger: 'L5'}],
        ],
        C2: [['always', {type: 'cage', place: 'rack A', logger: 'L2'}]],
        C3: [['always', {type: 'cage', place: 'rack A/1', logger: 'L3'}]],
        C4: [['always', {type: 'cage', place: 'cellar', logger: 'L4'}]],
      },
    });
    const needed = readingsNeeded(input);
    expect(needed.own).toEqual(['L1', 'L5']);
    expect(needed.beside).toEqual(['L3', 'L2']);
    expect(needed.fromDays).toBeLessThan(days('2031-05-01 00:00') - 7);
    expect(needed.toDays).toBe(days('2031-05-20 00:00'));
  });
});
