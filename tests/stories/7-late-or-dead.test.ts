// Pupae far past their time: they are late, at rest or dead, and nobody writes them off. Everything is invented.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, forecastOf, kind, pupae, said, sample} from './story-room.ts';

const START = '2030-12-01T09:00';
const stories = [
  {lower: 9, degreeDays: 190, atC: 19, count: 24, out: 5, sum: 265},
  {lower: 6, degreeDays: 240, atC: 18, count: 40, out: 9, sum: 340},
];

describe.each(stories)('$count pupae of which $out came out', ({lower, degreeDays, atC, count, out, sum}) => {
  const room = newRoom();
  const when = (degreeDaysSince: number) => daysLater(START, degreeDaysSince / (atC - lower)).slice(0, 16);
  const now = when(sum);
  applied(room, now, [
    sample('S1', '2030-10-01'),
    kind({lower, degreeDays, cv: 0.1}),
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: atC}},
    pupae('R30-077', 'S1', 'C1', START, count),
    {record: 'emergence', lot: 'R30-077', at: when(degreeDays), adults: [{sex: 'female', count: out}]},
    {record: 'check', lot: 'R30-077', at: when(sum - 1), found: 0},
  ]);
  const left = count - out;

  it('calls those left late and keeps every one of them alive', () => {
    expect(forecastOf(room, now, 'R30-077')).toMatchObject({status: 'late', alive: left});
    expect(said(room, now, 'balance', 'R30-077')).toContain(
      `${count} started = ${left} alive + ${out} emerged`,
    );
  });

  it('names what they may be, how to tell, and what to do', () => {
    const words = said(room, now, 'forecast', 'R30-077', '--why');
    expect(words).toContain('Those that are left are late, in diapause, or dead: no date can tell which.');
    for (const test of ['weigh some singly', 'what bends and stays bent is dead', 'one with a hole'])
      expect(words).toContain(test);
    expect(words).toContain('chill: twelve weeks at 3 to 5 °C, then warm a third as a trial');
  });

  it('never lists them as lost', () => {
    expect(said(room, now, 'outcome', 'R30-077')).not.toMatch(/\d+ dead/);
  });
});
