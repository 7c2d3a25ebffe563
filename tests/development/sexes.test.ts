// Males and females apart, where the profile tells them.
import {expect, it} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import {profileOf, requestOf, START} from './lots.ts';

const kind = [{name: 'pupa', lower: 10, degreeDays: 100, cv: 0.02}];
const pupae = {atDays: START, stages: {pupa: 20}, progress: [0, 0] as const, ages: 'mixed' as const};
const warm = {atDays: Float64Array.of(START, START + 400), temperatureC: Float64Array.of(20, 20)};
const ask = (sexes?: {female: number; male: number; source: string}) =>
  forecastLot(requestOf([pupae], warm, {...profileOf(kind, {paceSd: 0}), ...(sexes && {sexes})}));

it('the sexes emerge when each has had its own dose: 95 and 108 of 100 degree-days at ten a day', () => {
  const {sexes} = ask({female: 1.08, male: 0.95, source: 'a'});
  expect(sexes!.male.p50!).toBeCloseTo(START + 9.5, 1);
  expect(sexes!.female.p50!).toBeCloseTo(START + 10.8, 1);
});

it('nothing is said of the sexes where no profile tells them apart', () => {
  expect(ask().sexes).toBeNull();
});
