// The distributions behind spread and order statistics, against printed tables.
import {expect, test} from 'vitest';
import {lnGamma, regularisedGamma} from '../../src/development/gamma-function.ts';
import {normalShare} from '../../src/development/normal.ts';
import {distributionOf} from '../../src/development/spread.ts';

// Abramowitz & Stegun 1964, Handbook of Mathematical Functions, Table 26.1 (normal probability function). From memory.
test.each([
  [0, 0.5],
  [0.5, 0.69146],
  [1, 0.84134],
  [1.96, 0.975],
  [2.5, 0.99379],
  [-3, 0.00135],
])('normalShare(%d) is the tabled %d', (z, share) => {
  expect(normalShare(z)).toBeCloseTo(share, 5);
});

// Γ(1/2) = √π and Γ(n + 1) = n!: DLMF 5.4.1, 5.4.6. From memory.
test('lnGamma(x) is the logarithm of the known values of the gamma function', () => {
  expect(lnGamma(0.5)).toBeCloseTo(Math.log(Math.PI) / 2, 11);
  expect(lnGamma(1)).toBeCloseTo(0, 11);
  expect(lnGamma(11)).toBeCloseTo(Math.log(3_628_800), 11);
});

// Upper 5 per cent points of chi-squared: Abramowitz & Stegun 1964, Table 26.8; P(χ² ≤ x; ν) = P(ν/2, x/2). From memory.
test.each([
  [1, 3.841],
  [4, 9.488],
  [10, 18.307],
  [30, 43.773],
  [100, 124.342],
])('regularisedGamma leaves 5 per cent of chi-squared with %d degrees beyond %d', (degrees, point) => {
  expect(regularisedGamma(degrees / 2, point / 2)).toBeCloseTo(0.95, 4);
});

// A Weibull variable of shape 2 is Rayleigh's, whose coefficient of variation is √(4/π − 1); at its mean the
// distribution function is 1 − exp(−π/4). Computed from the closed form.
test('distributionOf a Weibull dose of Rayleigh spread has the closed form of shape 2', () => {
  const share = distributionOf({family: 'weibull', cv: Math.sqrt(4 / Math.PI - 1)});
  expect(share(1)).toBeCloseTo(1 - Math.exp(-Math.PI / 4), 10);
});

// A gamma variable of coefficient of variation 1 is exponential: P(W ≤ w) = 1 − exp(−w). Computed.
test('distributionOf a gamma dose of coefficient of variation 1 is exponential', () => {
  const share = distributionOf({family: 'gamma', cv: 1});
  for (const w of [0.1, 0.7, 2.5]) expect(share(w)).toBeCloseTo(1 - Math.exp(-w), 12);
});
