// Pupae far past their time: they are late, at rest or dead, and nobody writes them off. Everything is invented; that
// short days tell many kinds to rest, and what tells the three apart, is common practice, no source.
import {describe, expect, it} from 'vitest';
import {newRoom} from '../commands/program.ts';
import {applied, daysLater, forecastOf, kind, pupae, said, sample, Z95} from './story-room.ts';

const START = '2030-12-01T09:00';
const CV = 0.1;
const stories = [
  {
    lower: 9,
    degreeDays: 190,
    atC: 19,
    count: 24,
    out: 5,
    lastOut: 205,
    sum: 265,
    light: ['06:00', '18:00'],
    hours: 12,
  },
  {
    lower: 6,
    degreeDays: 240,
    atC: 18,
    count: 40,
    out: 9,
    lastOut: 250,
    sum: 340,
    light: ['08:00', '18:30'],
    hours: 10.5,
  },
];

interface Late {
  readonly degreeDaysPast: number;
  readonly due: string;
  readonly sum: {readonly degreeDays: number; readonly required: number};
  readonly ranked: readonly {
    readonly cause: string;
    readonly chance: number;
    readonly why: readonly string[];
  }[];
  readonly tellApart: readonly string[];
  readonly actions: readonly string[];
}

describe.each(stories)('$count pupae of which $out came out', story => {
  const {lower, degreeDays, atC, count, out, lastOut, sum, light, hours} = story;
  const room = newRoom();
  const when = (degreeDaysSince: number) => daysLater(START, degreeDaysSince / (atC - lower)).slice(0, 16);
  const now = when(sum);
  const [on, off] = light;
  applied(room, now, [
    sample('S1', '2030-10-01'),
    kind({lower, degreeDays, cv: CV}, {survival: 0.9}),
    {
      ...{record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: atC}},
      light: {on, off},
    },
    pupae('R30-077', 'S1', 'C1', START, count),
    {
      ...{record: 'emergence', lot: 'R30-077', at: when(lastOut), since: when(degreeDays - 20)},
      adults: [{sex: 'female', count: out}],
    },
    {record: 'check', lot: 'R30-077', at: when(sum - 1), found: 0},
  ]);
  const left = count - out;
  /** The normal 95 % point in degree-days. */
  const due = degreeDays * (1 + Z95 * CV);

  it('calls those left late and keeps every one of them alive', () => {
    expect(forecastOf(room, now, 'R30-077')).toMatchObject({status: 'late', alive: left});
    expect(said(room, now, 'balance', 'R30-077')).toContain(
      `${count} started = ${left} alive + ${out} emerged`,
    );
    expect(said(room, now, 'outcome', 'R30-077')).not.toMatch(/\d+ dead/);
  });

  it('says how far past the 95 % point they are, and gives no date', () => {
    const [answer] = room.ask<{notOut: Late; adults: {animal: {p50: string | null}}}[]>(
      now,
      'forecast',
      'R30-077',
    );
    const {notOut, adults} = answer!;
    // Doses are reckoned in steps of about a two-hundredth of a stage.
    expect(Math.abs(notOut.degreeDaysPast - (sum - due))).toBeLessThan(1);
    expect(notOut.sum.degreeDays).toBeCloseTo(sum, 0);
    expect(adults.animal.p50).toBeNull();
    const words = said(room, now, 'forecast', 'R30-077');
    expect(words).toContain(
      `${left}, alive as far as anybody knows, are ${notOut.degreeDaysPast.toFixed(0)} degree-days`,
    );
    expect(words).toContain(
      `${sum} degree-days so far, ${Math.round((100 * sum) / degreeDays)} % of ${degreeDays}`,
    );
  });

  it('ranks diapause before dead before wrong constants, each with what speaks for it', () => {
    const [answer] = room.ask<{notOut: Late}[]>(now, 'forecast', 'R30-077');
    const {ranked} = answer!.notOut;
    expect(ranked.map(({cause}) => cause)).toEqual(['diapause', 'dead', 'late']);
    expect(ranked.reduce((all, {chance}) => all + chance, 0)).toBeCloseTo(1, 9);
    const words = said(room, now, 'forecast', 'R30-077', '--why');
    expect(words).toMatch(/\(1\) in diapause, \d+ %.*\(2\) dead.*\(3\) wrong constants, only late/);
    const long = hours % 1 === 0 ? `${hours} h` : `${Math.floor(hours)} h ${(hours % 1) * 60} min`;
    expect(words).toContain(`short days: ${long} of light in C1`);
    expect(words).toContain(
      `two groups: ${out} came out in their time, the last ${sum - lastOut} degree-days`,
    );
    expect(words).toContain('no cold: they have had none in this room');
    expect(words).toContain('Those that are left are late, in diapause, or dead: no date can tell which.');
  });

  it('offers what tells them apart, and what to do', () => {
    const words = said(room, now, 'forecast', 'R30-077');
    for (const test of ['weigh 5 singly', 'bend and touch', 'look for parasitoid holes'])
      expect(words).toContain(test);
    expect(words).toContain('stop the daily looks');
    expect(words).toContain(`chill the ${left} at 3 to 5 °C for twelve weeks or more`);
    expect(words).toContain('or warm a third as a trial');
  });

  it('asks for no daily look any more', () => {
    const {tasks} = room.ask<{tasks: {task: string; state: string}[]}>(daysLater(now, 3), 'today');
    expect(tasks.filter(({task, state}) => task === 'look' && state !== 'done')).toEqual([]);
  });
});

it('tells autumn light from where and when they were collected', () => {
  const room = newRoom();
  const now = daysLater(START, 26.5);
  applied(room, now, [
    sample('S1', '2030-10-01', {place: {latitude: 48, longitude: 9}}),
    kind({lower: 9, degreeDays: 190, cv: CV}),
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 19}},
    pupae('R30-077', 'S1', 'C1', START, 24),
    {record: 'check', lot: 'R30-077', at: daysLater(START, 26), found: 0},
  ]);
  const words = said(room, now, 'forecast', 'R30-077', '--why');
  expect(words).toMatch(
    /autumn light: the day was 11 h 4\d min long where they were collected, Tue 1 October/,
  );
  expect(words).toContain('none came out yet, as where the figures are wrong for all');
});
