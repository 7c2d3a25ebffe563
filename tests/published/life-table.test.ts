// Mortality by stage against a published life table.
import {expect, test} from 'vitest';
import {mortalityOf} from '../../src/records/mortality.ts';

// Gypsy moth in New England, modified from Campbell 1981, as printed in A. A. Sharov, Quantitative Population Ecology,
// lecture 6.2, "Stage-dependent life-tables" (alexei.nfshost.com/PopEcol/lec6/stagedep.html): stage, number at the
// start, deaths, and the printed mortality, survival and k-value −ln(s). Numbers are printed to one decimal, so that
// shares of small numbers carry the rounding of their deaths.
const GYPSY_MOTH = [
  ['eggs, predation', 450.0, 67.5, 0.15, 0.85, 0.1625],
  ['eggs, parasites', 382.5, 67.5, 0.176, 0.824, 0.1942],
  ['larvae I to III', 315.0, 157.5, 0.5, 0.5, 0.6932],
  ['larvae IV to VI, predation', 157.5, 118.1, 0.75, 0.25, 1.3857],
  ['larvae IV to VI, disease', 39.4, 7.9, 0.201, 0.799, 0.2238],
  ['larvae IV to VI, parasites', 31.5, 7.9, 0.251, 0.749, 0.2887],
  ['prepupae', 23.6, 0.7, 0.03, 0.97, 0.0301],
  ['pupae, predation', 22.9, 4.6, 0.201, 0.799, 0.2242],
  ['pupae, other', 18.3, 2.3, 0.126, 0.874, 0.1343],
  ['adults, sex ratio', 16.0, 5.6, 0.35, 0.65, 0.4308],
] as const;

test.each(GYPSY_MOTH)('%s: mortality, survival and k as printed', (_, entered, died, d, s, k) => {
  const mortality = mortalityOf(entered, died)!;
  expect(mortality.died).toBeCloseTo(d, 3);
  expect(mortality.survived).toBeCloseTo(s, 3);
  expect(Math.abs(mortality.k - k)).toBeLessThan(0.0016);
});

test('k-values add up to that of the generation: 3.7674, survival 0.0231', () => {
  const k = GYPSY_MOTH.reduce((sum, [, entered, died]) => sum + mortalityOf(entered, died)!.k, 0);
  expect(k).toBeCloseTo(3.7674, 2);
  expect(Math.exp(-k)).toBeCloseTo(0.0231, 3);
});

test('those taken out alive were at risk for half of the stage; nobody at risk tells nothing', () => {
  expect(mortalityOf(20, 4, 10)!.died).toBeCloseTo(4 / 15);
  expect(mortalityOf(0, 0)).toBeUndefined();
  expect(mortalityOf(4, 4)!.k).toBe(Number.POSITIVE_INFINITY);
});
