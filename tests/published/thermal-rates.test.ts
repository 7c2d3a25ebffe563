// Development times from published thresholds and constants, against the days the same sources print.
import {describe, expect, it} from 'vitest';
import {degreeDay} from '../../src/thermal/degree-day.ts';

describe('days at a constant temperature: constant / (T − threshold)', () => {
  it.each([
    {
      source:
        'Grassberger & Reiter 2002, Forensic Sci. Int., abstract: Protophormia terraenovae at 35 °C, printed ± 0.3 d (seen)',
      lower: 8.95,
      degreeDays: 240.2,
      at: 35,
      days: 9.19,
      within: 0.05,
    },
    {
      source:
        'Park, Park, Kim & Lee 2013, Korean J. Appl. Entomol. 52(2), abstract: Sogatella furcifera, egg (seen)',
      lower: 10.2,
      degreeDays: 122,
      at: 32.5,
      days: 5.5,
      within: 0.05,
    },
    {
      source: 'Khan & Spooner-Hart 2018, Acta Zool. Acad. Sci. Hung., abstract: Stethorus vagans (seen)',
      lower: 9.1,
      degreeDays: 189.2,
      at: 12,
      days: 65.2,
      within: 0.05,
    },
  ])('$days at $at °C: $source', ({lower, degreeDays, at, days, within}) => {
    const {ratePerDay} = degreeDay({kind: 'degree-day', lower, degreeDays});
    expect(Math.abs(1 / ratePerDay(at) - days)).toBeLessThanOrEqual(within);
  });
});
