// Windows of groups against species that were left out when the group was made, and the bundled figures against the
// method. Species: species-constants.csv, each row with its source.
import {describe, expect, it} from 'vitest';
import {forecastLot} from '../../src/development/forecast.ts';
import {bundled, group, taxon} from '../profiles/bundled.ts';
import {meanOf, memberships, type Prior, priorOf, speciesOf} from './group-priors.ts';
import {daysOf, type SpeciesConstant, speciesConstants} from './species-constants.ts';

const CV = 0.12;
const PACE_SD = 0.1;
const codes = Object.keys(memberships);

/** One egg laid at noon of day 100, held at a constant temperature. */
function forecastAt(code: string, temperatureC: number) {
  const [start, end] = [100, 500];
  return forecastLot({
    cohorts: [
      {atDays: start, stages: {[bundled(code).stages[0]!.stage]: 1}, progress: [0, 0], ages: 'mixed'},
    ],
    candidates: [{profile: bundled(code), weight: 1}],
    course: {atDays: Float64Array.of(start, end), temperatureC: Float64Array.of(temperatureC, temperatureC)},
    nowDays: start,
    alive: 1,
    closed: false,
    sightings: [],
    looksDays: [],
    survival: null,
    roundsDays: [],
    holdHours: 24,
    dayBoundsDays: [],
    sharesAtDays: [],
  });
}

/** Quantiles of the days of one animal as the members of a group give them: thresholds at three points. */
function windowOf({mean, sd, lowerMean, lowerSd, correlation}: Prior, temperatureC: number) {
  const spread = Math.hypot(sd * Math.sqrt(1 - correlation ** 2), PACE_SD, CV);
  const members = [-Math.sqrt(3), 0, Math.sqrt(3)].map((z, i) => {
    const lower = lowerMean + z * lowerSd;
    return {
      at: mean + correlation * sd * z + Math.log((20 - lower) / (temperatureC - lower)),
      weight: i === 1 ? 2 / 3 : 1 / 6,
    };
  });
  const below = (ln: number) =>
    members.reduce((sum, {at, weight}) => sum + weight * normalBelow((ln - at) / spread), 0);
  const quantile = (p: number) => {
    let [low, high] = [-2, 9];
    for (let i = 0; i < 60; i++) {
      const middle = (low + high) / 2;
      if (below(middle) < p) low = middle;
      else high = middle;
    }
    return Math.exp((low + high) / 2);
  };
  return {p10: quantile(0.1), p50: quantile(0.5), p90: quantile(0.9)};
}

/** P(Z ≤ z), by the series of Abramowitz & Stegun 26.2.17 (error below 7.5e-8). */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const tail =
    (Math.exp(-z * z * 0.5) / Math.sqrt(2 * Math.PI)) *
    t *
    (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  return z > 0 ? 1 - tail : tail;
}

/** How many of the species lie inside the window made from the others. */
function heldLeavingOneOut(species: readonly SpeciesConstant[], temperatureC: number): number {
  return species.filter(each => {
    const {p10, p90} = windowOf(priorOf(species.filter(other => other !== each)), temperatureC);
    const days = daysOf(each, temperatureC);
    return p10 <= days && days <= p90;
  }).length;
}

describe('a species left out falls into the 80 % window of its group as often as it should', () => {
  const wide = codes.filter(code => speciesOf(code).length >= 24);

  it('there are groups of dozens of species to tell', () => {
    expect(wide.length).toBeGreaterThanOrEqual(8);
    expect(speciesConstants.length).toBeGreaterThan(450);
  });

  it.each(wide.flatMap(code => [20, 25].map(t => [code, t] as const)))(
    '%s at %d °C: 70 to 90 per cent of the species left out singly',
    (code, temperatureC) => {
      const species = speciesOf(code);
      const held = heldLeavingOneOut(species, temperatureC) / species.length;
      expect(held).toBeGreaterThanOrEqual(0.7);
      expect(held).toBeLessThanOrEqual(0.9);
    },
  );

  it.each([20, 25])(
    'all groups of fewer species taken together, at %d °C: 75 to 90 per cent',
    temperatureC => {
      const narrow = codes.filter(code => !wide.includes(code));
      const held = narrow.map(code => heldLeavingOneOut(speciesOf(code), temperatureC));
      const all = narrow.map(code => speciesOf(code).length);
      const share = meanOf(held) / meanOf(all);
      expect(share).toBeGreaterThanOrEqual(0.75);
      expect(share).toBeLessThanOrEqual(0.9);
    },
  );

  it.each([20, 25])(
    'made from compiled values alone, at %d °C: 70 to 90 per cent of those read in abstracts',
    t => {
      let [held, all] = [0, 0];
      for (const code of codes.filter(each => each !== 'holometabola')) {
        const species = speciesOf(code);
        const compiled = species.filter(({source}) => source === 'compiled' || source === 'pratique');
        const others = species.filter(each => !compiled.includes(each));
        if (compiled.length < 6 || others.length < 3) continue;
        const {p10, p90} = windowOf(priorOf(compiled), t);
        held += others.filter(each => p10 <= daysOf(each, t) && daysOf(each, t) <= p90).length;
        all += others.length;
      }
      expect(all).toBeGreaterThan(60);
      expect(held / all).toBeGreaterThanOrEqual(0.7);
      expect(held / all).toBeLessThanOrEqual(0.9);
    },
  );
});

describe('the bundled groups are what the method makes of the species', () => {
  it.each(codes)('%s', code => {
    const {lnDaysAt20, lowerC, correlation, cv} = group(code).variation;
    const prior = priorOf(speciesOf(code));
    expect(lnDaysAt20.mean).toBeCloseTo(prior.mean, 2.7);
    expect(lnDaysAt20.sd).toBeCloseTo(prior.sd, 2.7);
    expect(lowerC.mean).toBeCloseTo(prior.lowerMean, 1.7);
    expect(lowerC.sd).toBeCloseTo(prior.lowerSd, 1.7);
    expect(correlation).toBeCloseTo(prior.correlation, 1.7);
    expect(cv).toBe(CV);
  });

  it.each(
    codes.filter(code =>
      group(code).sources.some(({citation}) => /^Shares at 20 °C, means over/.test(citation)),
    ),
  )('%s: shares of time are the means over species with three stages', code => {
    const timed = speciesOf(code).flatMap(({species, stageDays}) =>
      stageDays === null || species === 'Culiseta incidens' || Math.min(...stageDays) <= 0 ? [] : [stageDays],
    );
    group(code).stages.forEach(({share}, i) => {
      const mean = meanOf(timed.map(days => days[i]! / (days[0] + days[1] + days[2])));
      expect(Math.abs(share - mean)).toBeLessThan(0.002);
    });
  });
});

describe('a forecast from a group is the window of its members', () => {
  it.each(codes)(
    '%s at 25 °C: 10, 50 and 90 per cent are where the members have them, and most of its species are between',
    code => {
      const temperatureC = 25;

      const {variation} = group(code);
      const expected = windowOf(
        {
          mean: variation.lnDaysAt20.mean,
          sd: variation.lnDaysAt20.sd,
          lowerMean: variation.lowerC.mean,
          lowerSd: variation.lowerC.sd,
          correlation: variation.correlation,
        },
        temperatureC,
      );
      const {animal} = forecastAt(code, temperatureC);
      for (const at of ['p10', 'p50', 'p90'] as const)
        expect(Math.abs((animal[at]! - 100) / expected[at] - 1), at).toBeLessThan(0.08);
      const species = speciesOf(code).map(each => daysOf(each, temperatureC));
      const held = species.filter(days => animal.p10! - 100 <= days && days <= animal.p90! - 100).length;
      expect(held / species.length).toBeGreaterThanOrEqual(0.66);
    },
  );
});

describe('a bundled species lies within the middle 95 % of its group', () => {
  it.each([
    ['pieris-rapae', 'butterflies'],
    ['helicoverpa-armigera', 'noctuidae'],
    ['cydia-pomonella', 'tortricidae'],
    ['coccinella-septempunctata', 'coccinellidae'],
    ['gastrophysa-viridula', 'chrysomelidae'],
    ['ips-typographus', 'bark-beetles'],
    ['liriomyza-bryoniae', 'leaf-miners'],
    ['ceratitis-capitata', 'tephritidae'],
    ['nasonia-vitripennis', 'chalcidoidea'],
    ['podisus-maculiventris', 'pentatomidae'],
    ['chrysoperla-carnea', 'neuroptera'],
    ['tetranychus-urticae', 'tetranychidae'],
    ['exorista-mella', 'tachinidae'],
    ['cystiphora-schmidti', 'gall-formers'],
  ])('%s in %s at 20 °C', (species, code) => {
    const {lnDaysAt20, cv} = group(code).variation;
    const sd = Math.hypot(lnDaysAt20.sd, PACE_SD, cv);
    const days = forecastAt(species, 20).animal.p50! - 100;
    expect(taxon(species).rank).toBe('species');
    expect(Math.abs(Math.log(days) - lnDaysAt20.mean)).toBeLessThan(1.96 * sd);
  });
});

/** Judged windows at 20 °C from ranges of days in abstracts (Jackson & Sweeney 1995; Keiper & Foote 1999), and from species named there. */
describe('groups known by days alone keep the window judged from them', () => {
  it.each([
    ['carrion-flies', 22, 13, 40],
    ['chironomidae', 32, 17, 60],
    ['trichoptera', 105, 48, 230],
    ['net-spinning-caddisflies', 105, 48, 230],
    ['ephemeroptera', 107, 45, 255],
  ])('%s: %d d, %d to %d d', (code, p50, p10, p90) => {
    const {variation, paceSd} = group(code);
    const sd = Math.hypot(variation.lnDaysAt20.sd, paceSd, variation.cv);
    const at = (z: number) => Math.exp(variation.lnDaysAt20.mean + z * sd);
    for (const [z, days] of [
      [-1.2815515655, p10],
      [0, p50],
      [1.2815515655, p90],
    ] as const)
      expect(Math.abs(at(z) / days - 1)).toBeLessThan(0.045);
  });
});
