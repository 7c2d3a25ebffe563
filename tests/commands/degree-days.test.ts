import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {Command, CommanderError, InvalidArgumentError} from 'commander';
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {command} from '../../src/commands/degree-days.ts';
import type {Cutoff} from '../../src/thermal/degree-day.ts';
import type {DegreeDaysAnswer} from '../../src/work/degree-days.ts';
import {temporaryFolder, teneral} from './program.ts';

interface Said {
  readonly answer: DegreeDaysAnswer & {readonly rows?: number; readonly rejected?: readonly unknown[]};
  readonly text: string;
}

/** The command with its options as commander reads them, without starting a process. */
async function degreeDays(...args: readonly string[]): Promise<Said> {
  const declared = new Command('degree-days').exitOverride().configureOutput({writeErr: () => {}});
  command.declare(declared);
  declared.parse(args, {from: 'user'});
  const said: Said[] = [];
  await command.run(
    {
      dir: 'room',
      by: 'A. Keeper',
      json: false,
      columns: 80,
      warn: () => {},
      answer: (value, text) => said.push({answer: value as Said['answer'], text: text()}),
    },
    declared.args,
    declared.opts(),
  );
  return said[0]!;
}

function file(text: string): string {
  const path = join(temporaryFolder(), 'log.csv');
  writeFileSync(path, text);
  return path;
}

/** Hourly readings from midnight on. */
function hourly(day: string, temperatures: readonly number[], heading = 'time,temperature'): string {
  const start = Date.parse(`${day}T00:00Z`);
  const rows = temperatures.map(
    (t, i) => `${new Date(start + i * 3_600_000).toISOString().slice(0, 16)},${t}`,
  );
  return file(`${heading}\n${rows.join('\n')}\n`);
}

describe('degree-days --extremes MIN MAX', () => {
  it('computes one day, by the single sine unless another method is asked for', async () => {
    const {answer, text} = await degreeDays('--extremes', '12', '24', '--lower', '10');
    expect(answer).toEqual({
      method: 'sine',
      cutoff: 'horizontal',
      unit: 'C',
      lower: 10,
      upper: null,
      total: 8,
      from: null,
      to: null,
      coverage: 1,
      gapHours: 0,
      days: [{day: null, degreeDays: 8, cumulative: 8, coverage: 1}],
    });
    expect(text).toBe('8.00 degree-days (°C) above 10 °C; method sine');
  });

  it('takes negative numbers as values', async () => {
    const {answer} = await degreeDays(
      '--extremes',
      '-6',
      '-2',
      '--lower',
      '-8',
      '--upper',
      '-1',
      '--method',
      'average',
    );
    expect(answer).toMatchObject({lower: -8, upper: -1, total: 4});
  });

  it('double methods take --next-min; others ignore it', async () => {
    const day = ['--extremes', '10', '20', '--lower', '10'];
    const total = async (...more: string[]) => (await degreeDays(...day, ...more)).answer.total;
    expect(await total('--method', 'double-triangle', '--next-min', '15')).toBeCloseTo((5 + 7.5) / 2, 12);
    expect(await total('--method', 'double-triangle')).toBeCloseTo(5, 12);
    expect(await total('--method', 'triangle', '--next-min', '15')).toBeCloseTo(5, 12);
    expect(await total('--method', 'double-sine', '--next-min', '-5')).toBeLessThan(
      await total('--method', 'sine'),
    );
  });

  it.each([
    [['--extremes', '20', '10', '--lower', '10'], 'the minimum 20 is above the maximum 10'],
    [
      ['--extremes', '10', '20', '--lower', '12', '--upper', '12'],
      'the upper threshold must be above the lower one',
    ],
    [
      ['--extremes', '10', '20', '--lower', '12', '--method', 'average', '--cutoff', 'vertical'],
      'no vertical cutoff',
    ],
    [['--extremes', '10', '20', '--lower', '12', '--method', 'trace'], 'minimum and maximum make no trace'],
    [['--extremes', '10', '20', '--lower', '12', '--max-gap', '-1'], 'a pause of -1 hours is none'],
    [['--extremes', '10', '20', '--lower', '12', '--from', '2026-02-30'], '"2026-02-30" is no day'],
    [['--extremes', '10', '20', '--lower', '12', '--from', '2026-02-03', '--to', '2026-02-01'], 'lies after'],
  ])('%j is refused', async (args, what) => {
    await expect(degreeDays(...args)).rejects.toMatchObject({name: 'Refusal'});
    await expect(degreeDays(...args)).rejects.toThrow(what);
  });

  it.each([
    [['--extremes', '10', '20']],
    [['--extremes', '10', '20', '--lower', 'NaN']],
    [['--extremes', '10', '20', '--lower', 'warm']],
    [['--extremes', '10', '20', '--lower', '3', '--cutoff', 'diagonal']],
    [['--extremes', '10', '20', '--lower', '3', '--method', 'cosine']],
    [['--extremes', '10', '20', '--lower', '3', '--unit', 'K']],
  ])('%j is wrong usage', async args => {
    await expect(degreeDays(...args)).rejects.toBeInstanceOf(CommanderError);
  });

  it.each([
    [['--extremes', '10', '--lower', '3']],
    [['--extremes', '10', '20', '30', '--lower', '3']],
    [['--lower', '3']],
    [['log.csv', '--lower', '3', '--extremes', '1', '2']],
  ])('%j is wrong usage too', async args => {
    await expect(degreeDays(...args)).rejects.toBeInstanceOf(InvalidArgumentError);
  });
});

describe('degree-days FILE of readings', () => {
  const steady = (hours: number, temperature: number) => new Array<number>(hours).fill(temperature);

  it('integrates the trace by day, midnight to midnight', async () => {
    const {answer} = await degreeDays(hourly('2026-05-01', steady(49, 22)), '--lower', '10');
    expect(answer).toMatchObject({
      method: 'trace',
      unit: 'C',
      lower: 10,
      upper: null,
      from: '2026-05-01T00:00:00+00:00',
      to: '2026-05-03T00:00:00+00:00',
      coverage: 1,
      gapHours: 0,
      rows: 49,
    });
    expect(answer.total).toBeCloseTo(24, 9);
    expect(answer.days.map(({day}) => day)).toEqual(['2026-05-01', '2026-05-02', '2026-05-03']);
    expect(answer.days.map(({cumulative}) => Math.round(cumulative))).toEqual([12, 24, 24]);
  });

  it('adds nothing for a pause longer than --max-gap and reports it', async () => {
    const path = file(
      'time,temperature\n2026-05-01 00:00,22\n2026-05-01 03:00,22\n2026-05-01 06:30,22\n2026-05-01 08:00,22\n',
    );
    const {answer, text} = await degreeDays(path, '--lower', '10');
    expect(answer.gapHours).toBeCloseTo(3.5, 9);
    expect(answer.coverage).toBeCloseTo(4.5 / 8, 9);
    expect(answer.total).toBeCloseTo((12 * 4.5) / 24, 9);
    expect(text).toContain(
      'From 2026-05-01 00:00 (UTC+00:00) to 2026-05-01 08:00 (UTC+00:00), of which 56.2 % are known',
    );
    expect(text).toContain('3.50 hours lie in pauses longer than 3 h and add nothing.');
    const patient = await degreeDays(path, '--lower', '10', '--max-gap', '3.5');
    expect(patient.answer).toMatchObject({gapHours: 0, coverage: 1});
  });

  it('daily methods take the lowest and highest reading stamped within the civil day of the zone', async () => {
    const path = file('time,temperature\n2026-05-01 21:00,30\n2026-05-01 23:00,12\n2026-05-02 12:00,20\n');
    const days = async (...more: string[]) =>
      (await degreeDays(path, '--lower', '10', '--method', 'average', ...more)).answer.days;
    expect(await days()).toMatchObject([
      {day: '2026-05-01', degreeDays: 11},
      {day: '2026-05-02', degreeDays: 10},
    ]);
    const offset = file('time,temperature\n2026-05-01T21:00Z,30\n2026-05-01T23:00Z,12\n');
    expect(
      (await degreeDays(offset, '--lower', '10', '--method', 'average', '--zone', 'Asia/Tokyo')).answer.days,
    ).toHaveLength(1);
  });

  it('reads instants without an offset in --zone: clocks that go forward take an hour from the day', async () => {
    const times = Array.from({length: 24}, (_, hour) => `2026-03-29 ${String(hour).padStart(2, '0')}:00,22`);
    const path = file(`time,temperature\n${times.join('\n')}\n2026-03-30 00:00,22\n`);
    const utc = await degreeDays(path, '--lower', '10');
    const amsterdam = await degreeDays(path, '--lower', '10', '--zone', 'Europe/Amsterdam');
    expect(utc.answer.total).toBeCloseTo(12, 9);
    expect(amsterdam.answer.total).toBeCloseTo((12 * 23) / 24, 9);
    expect(amsterdam.answer.rejected).toEqual([
      {row: 4, what: 'the clocks of Europe/Amsterdam skip 2026-03-29 02:00'},
    ]);
    expect(amsterdam.text).toContain('1 of 25 rows cannot be read and do not count:\n  row 4:');
  });

  it('--from and --to are inclusive days: readings stamped outside them do not count', async () => {
    const path = hourly('2026-05-01', steady(24 * 5, 34));
    const {answer} = await degreeDays(path, '--lower', '10', '--from', '2026-05-02', '--to', '2026-05-03');
    expect(answer).toMatchObject({from: '2026-05-02T00:00:00+00:00', to: '2026-05-03T23:00:00+00:00'});
    expect(answer.total).toBeCloseTo(47, 9);
    await expect(degreeDays(path, '--lower', '10', '--from', '2027-01-01')).rejects.toThrow(
      'The file runs from 2026-05-01 to 2026-05-05',
    );
  });

  it('thresholds and sums are in --unit, whatever the unit of the file', async () => {
    const celsius = Array.from({length: 48}, (_, i) => 18 + 6 * Math.sin(i / 4));
    const inC = hourly('2026-05-01', celsius);
    const inF = hourly(
      '2026-05-01',
      celsius.map(t => t * 1.8 + 32),
      'time,temperature (°F)',
    );
    for (const method of ['trace', 'sine', 'double-triangle', 'average']) {
      const c = (await degreeDays(inC, '--lower', '15', '--upper', '21', '--method', method)).answer.total;
      const f = async (path: string) =>
        (await degreeDays(path, '--lower', '59', '--upper', '69.8', '--unit', 'F', '--method', method)).answer
          .total;
      expect(await f(inC)).toBeCloseTo(c * 1.8, 9);
      expect(await f(inF)).toBeCloseTo(c * 1.8, 9);
    }
  });

  it('a steady temperature at the upper threshold counts under the vertical cutoff, in °F too', async () => {
    const path = hourly('2026-05-01', steady(25, 71.3), 'time,temp (°F)');
    const {answer} = await degreeDays(
      path,
      '--lower',
      '50',
      '--upper',
      '71.3',
      '--cutoff',
      'vertical',
      '--unit',
      'F',
    );
    expect(answer.total).toBeCloseTo(21.3, 9);
  });

  it('a single reading makes no trace, and a day of a daily method', async () => {
    const path = file('time,temperature\n2026-05-01 10:00,22\n');
    expect((await degreeDays(path, '--lower', '10')).answer).toMatchObject({
      total: 0,
      coverage: 0,
      gapHours: 0,
    });
    expect((await degreeDays(path, '--lower', '10', '--method', 'sine')).answer.total).toBe(12);
  });
});

describe('degree-days FILE of daily extremes', () => {
  const path = () => file('date,min,max\n2026-05-01,10,20\n2026-05-02,14,22\n2026-05-04,16,20\n');

  it('uses the single sine; a missing day adds nothing and shows in coverage', async () => {
    const {answer, text} = await degreeDays(path(), '--lower', '8');
    expect(answer).toMatchObject({
      method: 'sine',
      from: '2026-05-01',
      to: '2026-05-04',
      coverage: 0.75,
      gapHours: 24,
      total: 7 + 10 + 10,
    });
    expect(answer.days.map(({day}) => day)).toEqual(['2026-05-01', '2026-05-02', '2026-05-04']);
    expect(text).toContain(
      'From 2026-05-01 to 2026-05-04, of which 75 % are known: 1 day is missing and adds nothing.',
    );
  });

  it('double methods fall to the next day’s minimum, the last day and a day before a missing one to their own', async () => {
    const {answer} = await degreeDays(path(), '--lower', '8', '--method', 'double-triangle');
    expect(answer.days.map(({degreeDays}) => degreeDays)).toEqual([(7 + 9) / 2, 10, 10]);
  });

  it('makes no trace', async () => {
    await expect(degreeDays(path(), '--lower', '8', '--method', 'trace')).rejects.toThrow('make no trace');
  });

  it('--from and --to choose days', async () => {
    const {answer} = await degreeDays(path(), '--lower', '8', '--from', '2026-05-02', '--to', '2026-05-03');
    expect(answer).toMatchObject({total: 10, coverage: 1, from: '2026-05-02', to: '2026-05-02'});
  });
});

describe('degree-days of random readings with gaps', () => {
  const cutoff = fc.constantFrom<Cutoff>('horizontal', 'intermediate', 'vertical');
  // Seconds to the next reading: mostly up to half an hour, now and then a pause.
  const step = fc.oneof(
    {weight: 9, arbitrary: fc.integer({min: 1, max: 1800})},
    fc.integer({min: 1800, max: 40_000}),
  );
  const readings = fc.array(fc.tuple(step, fc.integer({min: -1000, max: 4500})), {
    minLength: 2,
    maxLength: 200,
  });

  it('are the area of effective degrees under straight lines, cut at every threshold', async () => {
    await fc.assert(
      fc.asyncProperty(
        readings,
        fc.integer({min: -5, max: 15}),
        fc.integer({min: 1, max: 20}),
        cutoff,
        async (steps, lower, span, how) => {
          const upper = lower + span;
          let at = Date.parse('2026-03-01T00:00Z');
          const points = steps.map(([seconds, hundredths]) => {
            at += seconds * 1000;
            return {at, temperature: hundredths / 100};
          });
          const path = file(
            `time,temperature\n${points.map(p => `${new Date(p.at).toISOString()},${p.temperature}`).join('\n')}`,
          );
          const {answer} = await degreeDays(
            path,
            '--lower',
            `${lower}`,
            '--upper',
            `${upper}`,
            '--cutoff',
            how,
          );
          const expected = byHand(points, lower, upper, how);
          expect(Math.abs(answer.total - expected.total)).toBeLessThanOrEqual(1e-9 + 1e-6 * expected.total);
          expect(answer.gapHours).toBeCloseTo(expected.gapHours, 6);
        },
      ),
      {numRuns: 60},
    );
  });
});

/** Between thresholds effective degrees are a straight line in time, so its middle times its length is exact. */
function byHand(
  points: readonly {readonly at: number; readonly temperature: number}[],
  lower: number,
  upper: number,
  cutoff: Cutoff,
): {total: number; gapHours: number} {
  const effective = (t: number) => {
    if (t <= lower) return 0;
    if (t <= upper) return t - lower;
    if (cutoff === 'vertical') return 0;
    return cutoff === 'horizontal' ? upper - lower : Math.max(0, 2 * upper - lower - t);
  };
  let total = 0;
  let gapHours = 0;
  for (let i = 1; i < points.length; i++) {
    const [a, b] = [points[i - 1]!, points[i]!];
    const hours = (b.at - a.at) / 3_600_000;
    if (hours > 3) {
      gapHours += hours;
      continue;
    }
    const crossings = [lower, upper, 2 * upper - lower]
      .map(level => (level - a.temperature) / (b.temperature - a.temperature))
      .filter(share => share > 0 && share < 1);
    const cuts = [0, ...crossings.sort((x, y) => x - y), 1];
    for (let k = 1; k < cuts.length; k++) {
      const middle = (cuts[k - 1]! + cuts[k]!) / 2;
      const temperature = a.temperature + (b.temperature - a.temperature) * middle;
      total += (effective(temperature) * (cuts[k]! - cuts[k - 1]!) * hours) / 24;
    }
  }
  return {total, gapHours};
}

describe('teneral degree-days, as the shell runs it', () => {
  it('answers JSON on standard output, with negative numbers as values', () => {
    const {status, out} = teneral([
      'degree-days',
      '--extremes',
      '-3',
      '12',
      '--lower',
      '-5',
      '--method',
      'average',
      '--json',
    ]);
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({method: 'average', total: 9.5});
  });

  it('refuses with exit status 1, one line, and the refusal as JSON', () => {
    const {status, out, err} = teneral(['degree-days', 'missing.csv', '--lower', '10', '--json']);
    expect(status).toBe(1);
    expect(err).toBe('teneral: missing.csv: there is no such file. Check the name and the folder.\n');
    expect(JSON.parse(out)).toEqual({
      error: {what: 'there is no such file', where: 'missing.csv', mend: 'Check the name and the folder.'},
    });
  });

  it('wrong usage ends with exit status 2', () => {
    expect(teneral(['degree-days', '--lower', 'warm', '--extremes', '1', '2']).status).toBe(2);
    expect(teneral(['degree-days', '--lower', '5']).status).toBe(2);
  });
});
