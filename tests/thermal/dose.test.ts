import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import type {Cutoff} from '../../src/thermal/degree-day.ts';
import {doseBetween, doseCourse, dosesBetween} from '../../src/thermal/dose.ts';
import {rateModel} from '../../src/thermal/rate-model.ts';
import type {TemperatureTrace} from '../../src/thermal/trace.ts';
import {meanOver} from './quadrature.ts';

const HOUR = 1 / 24;
const START = 20_000;
const cutoffs = ['horizontal', 'intermediate', 'vertical'] as const satisfies readonly Cutoff[];

const degreeDays = (cutoff: Cutoff = 'horizontal', lower = 10, upper: number | undefined = 30) =>
  rateModel({kind: 'degree-day', lower, upper, cutoff, degreeDays: 1});
const tabled = rateModel({
  kind: 'table',
  points: [
    {temperature: 15, days: 40},
    {temperature: 20, days: 21.5},
    {temperature: 25, days: 13.2},
    {temperature: 30, days: 12.1},
  ],
  lower: 8,
  upper: 34,
});

function trace(
  points: readonly (readonly [hours: number, temperatureC: number])[],
  maxGapHours = 3,
): TemperatureTrace {
  return {
    atDays: Float64Array.from(points, ([hours]) => START + hours * HOUR),
    temperatureC: Float64Array.from(points, ([, temperature]) => temperature),
    maxGapDays: maxGapHours * HOUR,
  };
}

/** Readings 1 to 240 minutes apart (some pauses are gaps), from frost to above every threshold. */
const anyTrace = fc
  .array(fc.tuple(fc.integer({min: 1, max: 240}), fc.integer({min: -500, max: 4500})), {
    minLength: 2,
    maxLength: 40,
  })
  .map(steps => {
    let minutes = 0;
    return trace(
      steps.map(([pause, hundredths]) => {
        minutes += pause;
        return [minutes / 60, hundredths / 100] as const;
      }),
    );
  });
const share = fc.double({min: -0.1, max: 1.1, noNaN: true});
const cutoff = fc.constantFrom(...cutoffs);

const spanOf = ({atDays}: TemperatureTrace) => [atDays[0]!, atDays.at(-1)!] as const;
const instant = (of: TemperatureTrace, portion: number) => {
  const [first, last] = spanOf(of);
  return first + portion * (last - first);
};

describe('doseBetween', () => {
  it('is temperature above the threshold times days on a flat trace', () => {
    const flat = trace([
      [0, 22],
      [3, 22],
      [6, 22],
    ]);
    expect(doseBetween(flat, degreeDays(), START, START + 0.25)).toEqual({
      dose: 3,
      coveredDays: 0.25,
      gapDays: 0,
    });
  });

  it('clips the first and the last piece', () => {
    const rising = trace([
      [0, 10],
      [2, 14],
      [4, 18],
    ]);
    // From 12 °C at 01:00 to 16 °C at 03:00: 4 °C above the threshold on average.
    const {dose, coveredDays} = doseBetween(rising, degreeDays(), START + HOUR, START + 3 * HOUR);
    expect(dose).toBeCloseTo((4 * 2) / 24, 10);
    expect(coveredDays).toBeCloseTo(2 / 24, 10);
  });

  it('adds nothing for a pause longer than allowed and counts it as a gap', () => {
    const broken = trace([
      [0, 20],
      [1, 20],
      [9, 20],
      [10, 20],
    ]);
    const {dose, coveredDays, gapDays} = doseBetween(broken, degreeDays(), START, START + 1);
    expect(dose).toBeCloseTo((10 * 2) / 24, 10);
    expect(coveredDays).toBeCloseTo(2 / 24, 10);
    expect(gapDays).toBeCloseTo(8 / 24, 10);
  });

  it('calls a pause of exactly the allowed length no gap, whatever the hour', () => {
    for (let minute = 0; minute < 1440; minute += 7) {
      const pause = trace([
        [minute / 60, 20],
        [minute / 60 + 3, 20],
      ]);
      expect(doseBetween(pause, degreeDays(), START, START + 3).gapDays).toBe(0);
    }
  });

  it('counts a piece with an unknown temperature as a gap and takes two readings of one instant as a step', () => {
    const stepped = trace([
      [0, 15],
      [2, 15],
      [2, 25],
      [4, 25],
      [5, Number.NaN],
      [6, 20],
      [7, 20],
    ]);
    const {dose, coveredDays, gapDays} = doseBetween(stepped, degreeDays(), START, START + 1);
    expect(dose).toBeCloseTo((2 * 5 + 2 * 15 + 10) / 24, 9);
    expect(coveredDays).toBeCloseTo(5 / 24, 9);
    expect(gapDays).toBeCloseTo(2 / 24, 9);
  });

  it.each([[[]], [[[0, 20]]]] as const)('is 0 for a trace of %j', points => {
    expect(doseBetween(trace(points), degreeDays(), START, START + 1)).toEqual({
      dose: 0,
      coveredDays: 0,
      gapDays: 0,
    });
  });

  it('agrees with quadrature of the rate along the trace, also where pieces are nearly flat', () => {
    const slopes = [20, 3, 1e-2, 1e-4, 9e-6, 1e-6, 1e-8, 1e-10, 1e-12, 0];
    for (const model of [...cutoffs.map(name => degreeDays(name)), tabled])
      for (const base of [11, 18.3, 25.7, 29, 33])
        for (const rise of slopes) {
          if (base < 30 && base + rise > 30) continue;
          const piece = trace([
            [0, base],
            [2, base + rise],
          ]);
          // The table's cubic changes at 15, 20, 25 and 30 °C, degree-days at 30 and 50: cells end there.
          const knots = [base, 15, 20, 25, 30, 34, 50, base + rise].filter(
            at => at >= base && at <= base + rise,
          );
          const area = knots
            .slice(1)
            .reduce((sum, to, i) => sum + meanOver(model.ratePerDay, knots[i]!, to, 1) * (to - knots[i]!), 0);
          const expected =
            (rise > 1e-6 ? area / rise : meanOver(model.ratePerDay, base, base + rise, 1)) / 12;
          const {dose} = doseBetween(piece, model, START, START + 1);
          expect(Math.abs(dose - expected)).toBeLessThanOrEqual(1e-9 * expected);
        }
  });

  it('adds up over any split of the interval', () => {
    fc.assert(
      fc.property(
        anyTrace,
        cutoff,
        fc.array(share, {minLength: 3, maxLength: 9}),
        (readings, name, portions) => {
          const bounds = Float64Array.from(portions, portion => instant(readings, portion)).sort();
          const model = degreeDays(name);
          const parts = dosesBetween(readings, model, bounds);
          const whole = doseBetween(readings, model, bounds[0]!, bounds.at(-1)!);
          const sum = (column: Float64Array) => column.reduce((total, value) => total + value, 0);
          expect(sum(parts.dose)).toBeCloseTo(whole.dose, 9);
          expect(sum(parts.coveredDays)).toBeCloseTo(whole.coveredDays, 10);
          expect(sum(parts.gapDays)).toBeCloseTo(whole.gapDays, 10);
        },
      ),
    );
  });

  it('covers or misses all the time between the first and the last reading', () => {
    fc.assert(
      fc.property(anyTrace, readings => {
        const [first, last] = spanOf(readings);
        const {coveredDays, gapDays} = doseBetween(readings, degreeDays(), first - 1, last + 1);
        expect(coveredDays + gapDays).toBeCloseTo(last - first, 10);
      }),
    );
  });

  it('orders the cutoffs: vertical ≤ intermediate ≤ horizontal', () => {
    fc.assert(
      fc.property(anyTrace, readings => {
        const [horizontal, intermediate, vertical] = cutoffs.map(
          name => doseBetween(readings, degreeDays(name), ...spanOf(readings)).dose,
        );
        expect(vertical!).toBeLessThanOrEqual(intermediate! + 1e-12);
        expect(intermediate!).toBeLessThanOrEqual(horizontal! + 1e-12);
      }),
    );
  });

  it('never falls when the trace is warmer, below the upper threshold', () => {
    fc.assert(
      fc.property(anyTrace, fc.double({min: 0, max: 10, noNaN: true}), (readings, warming) => {
        const model = degreeDays('horizontal', 10, undefined);
        const warmer = {...readings, temperatureC: readings.temperatureC.map(at => at + warming)};
        const cold = doseBetween(readings, model, ...spanOf(readings)).dose;
        expect(doseBetween(warmer, model, ...spanOf(readings)).dose).toBeGreaterThanOrEqual(cold - 1e-12);
      }),
    );
  });

  it('is the same in Fahrenheit: degree-days are 9/5 of those in Celsius', () => {
    const fahrenheit = (celsius: number) => (celsius * 9) / 5 + 32;
    fc.assert(
      // A vertical cutoff is left out: at the threshold itself rounding decides between all and nothing.
      fc.property(anyTrace, fc.constantFrom<Cutoff>('horizontal', 'intermediate'), (readings, name) => {
        const inC = doseBetween(readings, degreeDays(name), ...spanOf(readings)).dose;
        const inF = doseBetween(
          {...readings, temperatureC: readings.temperatureC.map(fahrenheit)},
          degreeDays(name, fahrenheit(10), fahrenheit(30)),
          ...spanOf(readings),
        ).dose;
        expect(inF).toBeCloseTo((inC * 9) / 5, 9);
      }),
    );
  });

  it('leaves the trace as it is', () => {
    const readings = trace([
      [0, 12],
      [1, 28],
    ]);
    const before = structuredClone(readings);
    doseBetween(readings, degreeDays(), START, START + 1);
    expect(readings).toEqual(before);
  });
});

describe('doseCourse', () => {
  it('is the dose from the first reading up to each node', () => {
    fc.assert(
      fc.property(anyTrace, fc.array(share, {maxLength: 12}), (readings, portions) => {
        const nodes = Float64Array.from(portions, portion => instant(readings, portion)).sort();
        const course = doseCourse(readings, tabled, nodes);
        nodes.forEach((node, i) => {
          expect(course[i]).toBeCloseTo(
            node <= readings.atDays[0]! ? 0 : doseBetween(readings, tabled, readings.atDays[0]!, node).dose,
            12,
          );
        });
      }),
    );
  });
});
