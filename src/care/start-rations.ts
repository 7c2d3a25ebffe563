// How much animals of a kind eat, by stage, with where the figures come from. Each was measured on one species: the
// nearest there is, and a beginning. Kinds that are not here have no figure that would do for all of them.
import type {FoodEach} from './amounts.ts';

interface Figures {
  readonly amount: FoodEach;
  readonly source: string;
}

/**
 * What each instar ate in all, over how long it lasted: 19.4 aphids in 3.5 days, 24.8 in 2, 49.7 in 2.2, 188.9 in 4.1.
 * The two-spot ladybird eats as many in all (284: Jalali et al. 2009, Eur. J. Entomol. 106, 193, abstract seen).
 */
export const ladybirds: Figures = {
  amount: {
    each: {'larva-1': 5.5, 'larva-2': 12, 'larva-3': 23, 'larva-4': 46, larva: 24},
    per: 'day',
    of: 'aphids',
  },
  source:
    'aphids eaten by Harmonia axyridis: Santos et al. 2014, Fla. Entomol. 97(4), what an instar ate over its days (abstract seen)',
};

/**
 * 94.56 cm² in all, of which 0.1, 1.1, 4.6, 12.3, 19.9 and 62.0 % by the six instars, in 13.73 days at 25 °C; an
 * instar is taken to last a sixth of them. Four other species on soybean eat as much; one twice that.
 */
export const noctuids: Figures = {
  amount: {
    each: {
      'larva-1': 0.041,
      'larva-2': 0.45,
      'larva-3': 1.9,
      'larva-4': 5.1,
      'larva-5': 8.2,
      'larva-6': 26,
      larva: 6.9,
    },
    per: 'day',
    of: 'cm² leaf',
  },
  source:
    'leaf eaten by Spodoptera frugiperda: Garner & Lynch 1981, J. Econ. Entomol. 74, 191, over the larval days of Montezano et al. 2019, J. Agric. Sci. 11(8) (abstracts seen); give more, leaves wilt',
};

/** Larvae grew up in 30 mL each where 7 µg a millilitre and day were given: 0.21 mg. */
export const mosquitoes: Figures = {
  amount: {each: 0.2, per: 'day', of: 'mg food'},
  source:
    '7 µg a mL and day at 30 mL a larva, Anopheles gambiae: Psyche 2012, 480483 (abstract seen); newly hatched larvae die of an excess (the timetable again)',
};

export const midges: Figures = {
  amount: {each: 0.12, per: 'day', of: 'mg food'},
  source: '0.12 mg a larva and day: Ristola et al. 1999, Environ. Toxicol. Chem. 18, 756 (abstract seen)',
};

/** The middle of the three densities that were compared, 10, 20 and 40 larvae on 20 g of liver. */
export const carrionFlies: Figures = {
  amount: {each: 1, per: 'life', of: 'g meat'},
  source:
    '20 larvae on 20 g of liver, Lucilia sericata: Zheng et al. 2017, J. Med. Entomol. (abstract seen); 1 g a larva is common practice',
};

/** 0.443 g as an eighth instar at 0.923 g of feed a gram gained; 0.418 g at 0.949 on another diet comes to as much. */
export const crickets: Figures = {
  amount: {each: 0.41, per: 'life', of: 'g dry feed'},
  source:
    'feed to the eighth instar, Acheta domesticus: Nakagaki & DeFoliart 1991, J. Econ. Entomol. 84, 891 (abstract seen)',
};

/** At 25 °C: fourteen on average, seven at the least. */
export const predatoryMites: Figures = {
  amount: {each: 14, per: 'life', of: 'spider-mite eggs'},
  source: 'to become adult, Phytoseiulus persimilis: a species page, nhm.ac.uk (seen)',
};
