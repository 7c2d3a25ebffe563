// How much animals eat, as the start values and profiles have it, against what was printed. The citation stands beside
// each; abstracts were read, not the papers.
import {describe, expect, it} from 'vitest';
import {eachOf, type FoodEach} from '../../src/care/amounts.ts';
import {
  carrionFlies,
  crickets,
  ladybirds,
  midges,
  mosquitoes,
  noctuids,
  predatoryMites,
} from '../../src/care/start-rations.ts';
import {allStartRules} from '../../src/care/start-rules.ts';
import {bundled} from '../profiles/bundled.ts';

/** Figures are kept to two places: within 5 % of what was printed. */
const within = (value: number, printed: number, share = 0.05) =>
  expect(Math.abs(value / printed - 1), `${value} for ${printed}`).toBeLessThanOrEqual(share);

const each = (amount: FoodEach, stage: string) => eachOf(stage, amount.each)!;
const amountOf = (code: string) => allStartRules.find(rule => rule.code === code)?.amount;

// Santos, Almeida, Castro-Guedes, Penteado 2014, Florida Entomologist 97(4), abstract: Harmonia axyridis on Cinara
// atlantica; days of the four larval instars, and aphids eaten in each.
describe('aphids that a ladybird larva eats in a day', () => {
  const printed = [
    {days: 3.5, aphids: 19.4},
    {days: 2, aphids: 24.8},
    {days: 2.2, aphids: 49.7},
    {days: 4.1, aphids: 188.9},
  ];

  it.each(printed.map((instar, i) => ({stage: `larva-${i + 1}`, ...instar})))(
    'as $stage: $aphids in $days days',
    ({stage, days, aphids}) => within(each(ladybirds.amount, stage), aphids / days),
  );

  it('where nobody tells instars apart: all of them over all their days', () => {
    const sum = (of: 'days' | 'aphids') => printed.reduce((all, instar) => all + instar[of], 0);
    within(each(ladybirds.amount, 'larva'), sum('aphids') / sum('days'));
  });

  // Jalali, Tirry, De Clercq 2009, Eur. J. Entomol. 106, 193–198, abstract: Adalia bipunctata eats 284 aphids as a larva.
  // Days: 151 degree-days above 8.8 °C at 20 °C (Obrycki & Tauber 1981, in the profile).
  it('of the two-spot ladybird, and no less than a tenth apart from the other in all', () => {
    const [care] = bundled('adalia-bipunctata').care!;
    within(each(care!.amount as FoodEach, 'larva-2'), 284 / (151 / (20 - 8.8)));
    const eaten = printed.reduce(
      (all, {days}, i) => all + days * each(ladybirds.amount, `larva-${i + 1}`),
      0,
    );
    within(eaten, 284, 0.1);
  });

  // Berry 2000, Oregon State University: Hippodamia convergens, 207 aphids in 22 days.
  it('of the convergent ladybird', () => {
    const [care] = bundled('hippodamia-convergens').care!;
    within(each(care!.amount as FoodEach, 'larva-4'), 207 / 22);
  });
});

// Garner & Lynch 1981, J. Econ. Entomol. 74, 191–193, abstract: Spodoptera frugiperda on peanut, 94.56 cm² a larva,
// by instar in per cent. Montezano et al. 2019, J. Agric. Sci. 11(8), abstract: 13.73 larval days at 25 °C, six instars.
describe('leaf that a noctuid larva eats in a day', () => {
  const shares = [0.1, 1.1, 4.6, 12.3, 19.9, 62];
  const days = 13.73;

  it.each(shares.map((percent, i) => ({stage: `larva-${i + 1}`, percent})))(
    'as $stage: $percent % of 94.56 cm² in a sixth of 13.73 days',
    ({stage, percent}) => within(each(noctuids.amount, stage), (percent / 100) * 94.56 * (6 / days)),
  );

  it('where nobody tells instars apart: all of it over all the days', () => {
    within(each(noctuids.amount, 'larva'), 94.56 / days);
  });

  // Bueno et al. 2011, Pest Manag. Sci. (doi 10.1002/ps.20472), abstract: 92.7 cm² for Pseudoplusia includens and up to
  // 118 cm² for S. frugiperda on soybean.
  it('comes in all to what other species and another crop gave', () => {
    const eaten = shares.reduce((all, _, i) => all + (days / 6) * each(noctuids.amount, `larva-${i + 1}`), 0);
    expect(eaten).toBeGreaterThan(92.7 * 0.95);
    expect(eaten).toBeLessThan(118);
  });

  // Khafagi et al. 2016, J. Agric. Sci. Food Technol.: the last two instars eat 90–95 % of the leaf (S. littoralis); in
  // the shares above it is 82 %.
  it('is mostly eaten by the last two instars', () => {
    const eaten = shares.map((_, i) => each(noctuids.amount, `larva-${i + 1}`));
    const all = eaten.reduce((sum, one) => sum + one, 0);
    expect((eaten[4]! + eaten[5]!) / all).toBeGreaterThan(0.8);
  });
});

describe('food in water', () => {
  // Psyche 2012, 480483, abstract: Anopheles gambiae grew up in as much as 30 mL a larva at 7 µg a millilitre and day.
  it('of a mosquito larva in a day: 30 mL at 7 µg', () => {
    within(each(mosquitoes.amount, 'larva-3'), 30 * 0.007);
    expect(amountOf('feed-culicidae')).toEqual(mosquitoes.amount);
  });

  // Ristola et al. 1999, Environ. Toxicol. Chem. 18, 756–764, abstract: 0.12 mg a larva and day is recommended.
  it('of a midge larva in a day: 0.12 mg', () => {
    expect(each(midges.amount, 'larva-4')).toBe(0.12);
    expect(amountOf('feed-chironomidae')).toEqual(midges.amount);
  });
});

describe('food given at once', () => {
  // Zheng et al. 2017, J. Med. Entomol., abstract: Lucilia sericata at 10, 20 and 40 larvae on 20 g of liver or diet.
  it('of a blow fly larva for its life lies between the densities that were reared', () => {
    const {per} = carrionFlies.amount;
    const grams = each(carrionFlies.amount, 'larva');
    expect([per, grams >= 20 / 40, grams <= 20 / 10]).toEqual(['life', true, true]);
  });

  // A page on Drosophila cultures, asaapestcontrol.com: vials of 10 mL. 200 larvae grow up on 5 mL of a defined medium
  // (abstract on extreme larval densities, Canadian Science Publishing): a vial bears what a stock of 5–20 females lays.
  it('of a fly vial is 10 mL, however many live in it', () => {
    expect(amountOf('feed-drosophilidae')).toEqual({whole: 10, of: 'mL medium'});
  });

  // Nakagaki & DeFoliart 1991, J. Econ. Entomol. 84, 891–896, abstract: Acheta domesticus on two diets, weight of the
  // eighth instar and feed per gain.
  it.each([
    [0.443, 0.923],
    [0.418, 0.949],
  ])('of a cricket up to its eighth instar: %d g at %d g of feed a gram', (grams, feedPerGain) => {
    within(each(crickets.amount, 'nymph-3'), grams * feedPerGain);
  });

  // The Natural History Museum's page on Phytoseiulus persimilis, nutrition: at 25 °C and 60 % relative humidity an
  // average of 14 spider-mite eggs, at the least seven, to reach adulthood.
  it('of a predatory mite to become adult: fourteen eggs', () => {
    expect(each(predatoryMites.amount, 'nymph-2')).toBe(14);
  });
});
