// Days published by other studies than those the profiles were made from.
import {describe, it} from 'vitest';
import {type Check, constant, expectWithin} from './duration-check.ts';

const otherStudies: Check[] = [
  {
    source:
      'Godin & Boivin 1998, Can. Entomol. 130:173-185, as compiled: 319.7 degree-days above 10 °C (seen)',
    profile: 'pieris-rapae',
    stages: 'all',
    points: constant(10, 319.7),
    within: 0.04,
  },
  {
    source: 'Gilbert 1988, J. Anim. Ecol. 57:395-410, figure as digitised, points scatter by a tenth (seen)',
    profile: 'pieris-rapae',
    stages: 'pupa',
    points: [
      [13.5, 24.51],
      [15.52, 20.96],
      [17.12, 15.92],
      [18.96, 13.62],
      [21.19, 10.8],
      [25.08, 7.06],
      [27.78, 6.61],
      [30.77, 5.88],
    ],
    within: 0.15,
  },
  {
    source: 'García and others 2018, J. Econ. Entomol. 111:120-126, eggs (seen in a data entry)',
    profile: 'spodoptera-frugiperda',
    stages: 'egg',
    points: [
      [18, 6],
      [22, 4.4],
      [26, 3],
      [30, 2],
    ],
    within: 0.1,
  },
  {
    source:
      'López and others 2019, Rev. Mex. Cienc. Agríc. 10:405-416, sum of six instars (seen in a data entry)',
    profile: 'spodoptera-frugiperda',
    stages: 'larva-1+larva-2+larva-3+larva-4+larva-5+larva-6',
    points: [
      [20, 25.88],
      [25, 17.4],
      [28, 14.94],
    ],
    within: 0.15,
  },
  {
    source: 'López and others 2019, pupa (seen in a data entry)',
    profile: 'spodoptera-frugiperda',
    stages: 'pupa',
    points: [
      [20, 25.61],
      [25, 12.31],
      [30, 8.17],
    ],
    within: 0.15,
  },
  {
    source:
      'Adly, Ibrahim & Ahmed, Thermal units requirements for Helicoverpa armigera on lettuce, abstract: three stages (seen)',
    profile: 'helicoverpa-armigera',
    stages: 'all',
    points: [20, 25].map(
      t => [t, 43.05 / (t - 12.56) + 255.66 / (t - 11.09) + 231.29 / (t - 11.23)] as const,
    ),
    within: 0.08,
  },
  {
    source: 'Plant Protect. Sci. 42:135-138, 2006, abstract: 625 degree-days above 11.5 °C (seen)',
    profile: 'helicoverpa-armigera',
    stages: 'all',
    points: constant(11.5, 625),
    within: 0.24,
  },
  {
    source:
      'Qureshi and others 1999, Appl. Entomol. Zool. 34:327-331, abstract: sum of the three stages (seen)',
    profile: 'helicoverpa-armigera',
    stages: 'all',
    points: [
      [20, 5.7 + 29 + 25.9],
      [30, 2.3 + 10.6 + 9.2],
    ],
    within: 0.23,
  },
  {
    source: 'Golizadeh and others 2007, abstract: 263.74 degree-days above 7.06 °C on cauliflower (seen)',
    profile: 'plutella-xylostella',
    stages: 'all',
    points: constant(7.06, 263.74),
    within: 0.03,
  },
  {
    source: 'Marchioro & Foerster 2011, abstract: 312.5 degree-days above 6.3 °C (seen)',
    profile: 'plutella-xylostella',
    stages: 'all',
    points: constant(6.3, 312.5),
    within: 0.11,
  },
  {
    source: 'Xing, Hoffmann & Ma 2014, constant 25 °C, figures as extracted: egg, larva, pupa summed (seen)',
    profile: 'plutella-xylostella',
    stages: 'all',
    points: [[25, 3.1 + 8.07 + 4.44]],
    within: 0.05,
  },
  {
    source:
      'Rock & Shaffer 1983, Environ. Entomol., abstract: larva and pupa 510 degree-days above 9.9 °C (seen)',
    profile: 'cydia-pomonella',
    stages: 'larva+pupa',
    points: [16, 21, 27].map(t => [t, 510 / (t - 9.9)] as const),
    within: 0.16,
  },
  {
    source:
      'Pitcairn and others 1991, as compiled by Buckley and others 2017: 451.8 degree-days above 12.9 °C (seen)',
    profile: 'cydia-pomonella',
    stages: 'all',
    points: constant(12.9, 451.8),
    within: 0.2,
  },
  {
    source:
      'Ciota and others 2014, J. Med. Entomol. 51:55-62, Figure 1, hatch to adult (seen in a compilation)',
    profile: 'culex-pipiens',
    stages: 'larva+pupa',
    points: [
      [16, 19.6],
      [20, 16.1],
      [24, 11.9],
      [28, 9.5],
      [32, 8.8],
    ],
    within: 0.18,
  },
  {
    source:
      'Madder, Surgeoner & Helson 1983, J. Med. Entomol. 20:275-287, Table 6, hatch to adult (seen in a compilation)',
    profile: 'culex-pipiens',
    stages: 'larva+pupa',
    points: [
      [15, 27.1],
      [17, 16],
      [20, 11.6],
      [23, 11.5],
      [30, 6.9],
    ],
    within: 0.21,
  },
  {
    source:
      'Rev. Saúde Pública, Aedes albopictus in a tree hole at 18 to 22 °C, hatch to adult 19.6 d, abstract (seen)',
    profile: 'aedes-albopictus',
    stages: 'larva+pupa',
    points: [[20, 19.6]],
    within: 0.03,
  },
  {
    source:
      'gaiac research institute 2019, first series (data entry, seen); the profile holds the mean of two',
    profile: 'cloeon-dipterum',
    stages: 'all',
    points: [
      [13, 142],
      [18, 47],
      [22, 30],
      [26, 23],
    ],
    within: 0.11,
  },
  {
    source: 'Ramos and others 2014, Adv. Entomol. 2:42: 243.9 degree-days above 12.4 °C (seen)',
    profile: 'harmonia-axyridis',
    stages: 'all',
    points: constant(12.4, 243.9),
    within: 0.07,
  },
  {
    source:
      'Harmonia axyridis on two prey, IOBC-WPRS Bulletin, abstract, on Aphis fabae (seen): the slowest series met',
    profile: 'harmonia-axyridis',
    stages: 'all',
    points: [
      [20, 37.85],
      [25, 24.45],
      [30, 18.3],
    ],
    within: 0.24,
  },
  {
    source:
      'Obrycki & Tauber 1981, Ann. Entomol. Soc. Am. 74:31-36, abstract: 197 degree-days above 12.1 °C (seen): the fastest met',
    profile: 'coccinella-septempunctata',
    stages: 'all',
    points: constant(12.1, 197),
    within: 0.23,
  },
  {
    source: 'Kawauchi 1983, as compiled by Buckley and others 2017: 239.6 degree-days above 11.7 °C (seen)',
    profile: 'coccinella-septempunctata',
    stages: 'all',
    points: constant(11.7, 239.6),
    within: 0.07,
  },
  {
    source: 'Simonet & Davenport 1981, Ann. Entomol. Soc. Am. 74, egg to adult (seen as extracted)',
    profile: 'listronotus-oregonensis',
    stages: 'all',
    points: [
      [18.3, 47.8],
      [23.9, 33.5],
      [26.7, 30.8],
      [29.4, 27.5],
      [32.3, 27.2],
    ],
    within: 0.15,
  },
  {
    source: 'Nasonia vitripennis in China 2019, J. Med. Entomol. 56:368-377, abstract, another host (seen)',
    profile: 'nasonia-vitripennis',
    stages: 'all',
    points: [
      [16, 39.72],
      [19, 29.08],
      [22, 21.2],
      [25, 14.78],
      [28, 11.33],
    ],
    within: 0.15,
  },
  {
    source:
      'Trichogramma pretiosum on Helicoverpa armigera eggs, abstract: 134.55 degree-days above 10.82 °C (seen)',
    profile: 'trichogramma-pretiosum',
    stages: 'all',
    points: constant(10.82, 134.55),
    within: 0.22,
  },
  {
    source:
      'Head and others 2002, as compiled by Buckley and others 2017: hatch and after 312.5 above 5.66 °C (seen)',
    profile: 'liriomyza-huidobrensis',
    stages: 'all',
    points: constant(5.66, 312.5),
    within: 0.12,
  },
  {
    source: 'Kilincer, Cobanoglu & Has, Turkish J. Agric. For., abstract: four stages at 23 °C summed (seen)',
    profile: 'phytoseiulus-persimilis',
    stages: 'all',
    points: [[23, 3.05 + 0.86 + 1.17 + 1.31]],
    within: 0.03,
  },
];

describe('other studies of the species', () => {
  it.each(otherStudies)('$profile $stages within $within: $source', expectWithin);
});
