// Development at constant temperatures through the rate models, against the tables the profiles were made from.
import {describe, expect, it} from 'vitest';
import {daysAt} from '../profiles/bundled.ts';
import {publishedIn, stageTables} from './stage-tables.ts';

describe('a table gives its own published days back exactly', () => {
  it.each(stageTables)('$profile $stage', ({profile, stage, temperatureC, days}) => {
    expect(publishedIn[profile]).toBeDefined();
    temperatureC.forEach((at, i) => {
      expect(Math.abs(daysAt(profile, stage, at) / days[i]! - 1)).toBeLessThan(1e-9);
    });
  });
});

/** Where only a longer span was published, its days are divided among stages; their sum is what was published. */
const divided = [
  {
    source: 'Grassberger & Frank 2003, Med. Vet. Entomol. 17:257-262, abstract: egg to adult (seen)',
    profile: 'nasonia-vitripennis',
    stages: 'all',
    points: [
      [15, 43.5],
      [20, 22.5],
      [25, 14.8],
      [30, 11.3],
    ],
  },
  {
    source:
      'Loetti, Schweigmann & Burroni 2011, J. Nat. Hist. 45:2203-2213, Table 2: hatch to adult (seen in a compilation)',
    profile: 'culex-pipiens',
    stages: 'larva+pupa',
    points: [
      [10, 39.8],
      [15, 21.6],
      [20, 13.3],
      [25, 10.2],
      [30, 8.0],
      [33, 11.5],
    ],
  },
  {
    source:
      'Phytoseiulus persimilis from Hatay, Turkish Journal of Zoology, abstract: females, mean of 8.12 and 8.16, 5.79 and 5.73, 3.88 and 4.27 d (seen)',
    profile: 'phytoseiulus-persimilis',
    stages: 'all',
    points: [
      [20, 8.14],
      [25, 5.76],
      [30, 4.075],
    ],
  },
  {
    source:
      'gaiac research institute 2019, unpublished data: hatch to emergence, mean of two series (seen in an open data entry)',
    profile: 'cloeon-dipterum',
    stages: 'all',
    points: [
      [13, (142 + 126.8) / 2],
      [18, (47 + 36.9) / 2],
      [22, (30 + 25.1) / 2],
      [26, (23 + 19.5) / 2],
    ],
  },
] as const;

describe('stages divided out of a longer span sum to what was published', () => {
  it.each(divided)('$profile: $source', ({profile, stages, points}) => {
    for (const [temperatureC, days] of points)
      expect(Math.abs(daysAt(profile, stages, temperatureC) / days - 1)).toBeLessThan(5e-4);
  });
});
