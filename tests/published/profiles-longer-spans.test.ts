// Egg to adult and other long spans of the studies whose stages made the profiles: the sum must come near.
import {describe, it} from 'vitest';
import {type Check, constant, expectWithin} from './duration-check.ts';

const sameStudy: Check[] = [
  {
    source: 'von Schmalensee and others 2023, egg-to-adult individuals (data file, seen)',
    profile: 'pieris-rapae',
    stages: 'all',
    points: [
      [14.9, 64.89],
      [19.37, 35.53],
      [24.67, 21.87],
      [28.11, 18.17],
      [31.51, 17.19],
    ],
    within: 0.04,
  },
  {
    source: 'von Schmalensee and others 2023, egg-to-adult individuals (data file, seen)',
    profile: 'pieris-napi',
    stages: 'all',
    points: [
      [14.97, 57.33],
      [20.21, 37.42],
      [24.68, 23.31],
      [28.07, 19.12],
      [30.46, 20.21],
    ],
    within: 0.1,
  },
  {
    source: 'Spanoudis and others 2019, egg to adult (data entry, seen)',
    profile: 'culex-pipiens-molestus',
    stages: 'all',
    points: [
      [15, 49.2],
      [20, 34],
      [25, 17],
      [30, 14.2],
    ],
    within: 0.001,
  },
  {
    source: 'Bayu and others 2017, females, egg to adult (data file, seen)',
    profile: 'tetranychus-urticae',
    stages: 'all',
    points: [
      [12.5, 61.5],
      [15, 35.9],
      [20, 16.2],
      [25, 10.4],
      [30, 6.4],
      [35, 5.5],
    ],
    within: 0.035,
  },
  {
    source:
      'Chrysoperla carnea, linear models, abstract: egg to adult 290.986 degree-days above 11.624 °C (seen)',
    profile: 'chrysoperla-carnea',
    stages: 'all',
    points: constant(11.624, 290.986),
    within: 0.015,
  },
  {
    source: 'Carrot weevil requirements, abstract: egg to adult 623 degree-days above 7.0 °C (seen)',
    profile: 'listronotus-oregonensis',
    stages: 'all',
    points: constant(7, 623),
    within: 0.03,
  },
  {
    source: 'Wermelinger & Seifert 1998, as compiled: egg to adult 392 degree-days above 6.6 °C (seen)',
    profile: 'ips-typographus',
    stages: 'all',
    points: constant(6.6, 392),
    within: 0.025,
  },
  {
    source: 'Minkenberg & Helderman 1990, as compiled: egg to adult 295.4 above 8.1 °C (seen)',
    profile: 'liriomyza-bryoniae',
    stages: 'all',
    points: constant(8.1, 295.4),
    within: 0.01,
  },
  {
    source: 'Lanzoni and others 2002, as compiled: egg to adult 280.3 above 8.1 °C (seen)',
    profile: 'liriomyza-huidobrensis',
    stages: 'all',
    points: constant(8.1, 280.3),
    within: 0.045,
  },
  {
    source: 'LaMana & Miller 1998, as compiled: egg to adult 267.3 above 11.23 °C (seen)',
    profile: 'harmonia-axyridis',
    stages: 'all',
    points: constant(11.23, 267.3),
    within: 0.02,
  },
  {
    source: 'Xia and others 1999, as compiled: egg to adult 244.3 above 11.76 °C (seen)',
    profile: 'coccinella-septempunctata',
    stages: 'all',
    points: constant(11.76, 244.3),
    within: 0.045,
  },
  {
    source: 'Liu, Chen & Zalucki 2002, as compiled: egg to adult 268.2 above 7.4 °C (seen)',
    profile: 'plutella-xylostella',
    stages: 'all',
    points: constant(7.4, 268.2),
    within: 0.03,
  },
  {
    source: 'Calvin and others 1984, as compiled: egg to adult 124.7 above 13.0 °C (seen)',
    profile: 'trichogramma-pretiosum',
    stages: 'all',
    points: constant(13, 124.7),
    within: 0.01,
  },
  {
    source: 'Gastrophysa viridula, Eur. J. Entomol., abstract: egg to adult at four temperatures (seen)',
    profile: 'gastrophysa-viridula',
    stages: 'all',
    points: [
      [18, 28.2],
      [21.5, 21.6],
      [25, 16.1],
      [28, 15.0],
    ],
    within: 0.06,
  },
  {
    source: 'David & Gardiner 1962, abstract: pupa (seen)',
    profile: 'pieris-brassicae',
    stages: 'pupa',
    points: [
      [12.5, 40],
      [30, 7.5],
    ],
    within: 0.05,
  },
];

describe('longer spans of the same study', () => {
  it.each(sameStudy)('$profile $stages within $within: $source', expectWithin);
});
