// Published thresholds and constants, against the profiles' own numbers or the straight line through their tables.
import {describe, expect, it} from 'vitest';
import {daysAt, taxon} from '../profiles/bundled.ts';
import {stageTables} from './stage-tables.ts';

/** Threshold and constant of the straight line through rates: x where it is 0, and 1 / slope. */
function straightLine(points: readonly (readonly [temperatureC: number, days: number])[]) {
  const n = points.length;
  const meanC = points.reduce((sum, [t]) => sum + t, 0) / n;
  const meanRate = points.reduce((sum, [, days]) => sum + 1 / days, 0) / n;
  const slope =
    points.reduce((sum, [t, days]) => sum + (t - meanC) * (1 / days - meanRate), 0) /
    points.reduce((sum, [t]) => sum + (t - meanC) ** 2, 0);
  return {lower: meanC - meanRate / slope, degreeDays: 1 / slope};
}

/** Points of stages in a row: their days summed at each temperature. */
function pointsOf(profile: string, stages: readonly string[], upTo: number) {
  const tables = stages.map(
    stage => stageTables.find(each => each.profile === profile && each.stage === stage)!,
  );
  return tables[0]!.temperatureC
    .map((at, i) => [at, tables.reduce((sum, {days}) => sum + days[i]!, 0)] as const)
    .filter(([at]) => at <= upTo);
}

const larvae = [1, 2, 3, 4, 5, 6].map(instar => `larva-${instar}`);

describe('the straight line through a table agrees with the published threshold and constant', () => {
  it.each([
    {
      source: 'Du Plessis and others 2020, Insects 11:228, abstract: egg (seen)',
      profile: 'spodoptera-frugiperda',
      stages: ['egg'],
      upTo: 30,
      lower: 13.01,
      within: 0.3,
    },
    {
      source: 'Du Plessis and others 2020, Insects 11:228, abstract: larva (seen)',
      profile: 'spodoptera-frugiperda',
      stages: larvae,
      upTo: 32,
      lower: 12.12,
      within: 0.2,
    },
    {
      source: 'Du Plessis and others 2020, Insects 11:228, abstract: pupa (seen)',
      profile: 'spodoptera-frugiperda',
      stages: ['pupa'],
      upTo: 32,
      lower: 13.06,
      within: 0.15,
    },
    {
      source: 'Du Plessis and others 2020, Insects 11:228, abstract: egg to adult (seen)',
      profile: 'spodoptera-frugiperda',
      stages: ['egg', ...larvae, 'pupa'],
      upTo: 32,
      lower: 12.57,
      within: 0.1,
    },
    {
      source:
        'Bayu and others 2017, Exp. Appl. Acarol. 72:205-227, abstract: females, egg to adult; the table sums rounded stages (seen)',
      profile: 'tetranychus-urticae',
      stages: ['egg', 'larva', 'nymph-1', 'nymph-2'],
      upTo: 35,
      lower: 11.63,
      degreeDays: 127.81,
      within: 0.15,
    },
    {
      source:
        'Godin & Boivin 1998, Canadian Entomologist 130:173-185, as compiled by Buckley and others 2017, Appendix S3: egg to adult (seen); another population',
      profile: 'pieris-rapae',
      stages: ['egg', 'larva', 'pupa'],
      upTo: 28.2,
      lower: 10.0,
      degreeDays: 319.7,
      within: 1.2,
    },
  ])(
    '$profile $stages, threshold $lower °C: $source',
    ({profile, stages, upTo, lower, degreeDays, within}) => {
      const points =
        profile === 'pieris-rapae'
          ? [14.9, 19.37, 24.67, 28.11].map(t => [t, daysAt(profile, 'all', t)] as const)
          : pointsOf(profile, stages, upTo);
      const line = straightLine(points);
      expect(Math.abs(line.lower - lower)).toBeLessThanOrEqual(within);
      if (degreeDays !== undefined)
        expect(Math.abs(line.degreeDays / degreeDays - 1)).toBeLessThanOrEqual(0.03);
    },
  );
});

/** Threshold and constant as printed, stage by stage. */
const printed = [
  {
    source: 'Jung and others 2023, J. Econ. Entomol. 116, abstract: common threshold (seen)',
    profile: 'helicoverpa-armigera',
    stages: {egg: [10.7, 43], larva: [10.7, 287], pupa: [10.7, 191]},
  },
  {
    source: 'Doerr, Brunner & Jones 2002, Environ. Entomol. 31:995-999, abstract (seen)',
    profile: 'lacanobia-subjuncta',
    stages: {egg: [6.6, 75], larva: [6.7, 476], pupa: [4.9, 312]},
  },
  {
    source: 'African Entomology 17(2), 2009, codling moth development rates, abstract (seen)',
    profile: 'cydia-pomonella',
    stages: {egg: [11.1, 80.1], larva: [7.9, 345.5], pupa: [9.9, 280]},
  },
  {
    source: 'Carrot weevil thermal requirements, record at scilit.net, abstract (seen)',
    profile: 'listronotus-oregonensis',
    stages: {egg: [9.5, 90], larva: [6.7, 264], prepupa: [7.8, 107], pupa: [7.2, 128]},
  },
  {
    source: 'Chrysoperla carnea, linear models, jbiocontrol.areeo.ac.ir/article_100610, abstract (seen)',
    profile: 'chrysoperla-carnea',
    stages: {
      egg: [10.848, 56.821],
      'larva-1': [9.572, 52.719],
      'larva-2': [13.307, 28.979],
      'larva-3': [12.514, 33.199],
      pupa: [12.004, 120.432],
    },
  },
  {
    source:
      'LaMana & Miller 1998, Environ. Entomol. 27:1001-1005, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'harmonia-axyridis',
    stages: {egg: [11, 42.6], larva: [11.1, 156], pupa: [11.4, 66.6]},
  },
  {
    source:
      'Xia and others 1999, Environ. Entomol. 28, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'coccinella-septempunctata',
    stages: {
      egg: [11.5, 42],
      'larva-1': [13.8, 22.8],
      'larva-2': [13.6, 20.4],
      'larva-3': [13.6, 23.1],
      'larva-4': [13.9, 38],
      pupa: [12.9, 63.6],
    },
  },
  {
    source:
      'Liu, Chen & Zalucki 2002, Environ. Entomol. 31, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'plutella-xylostella',
    stages: {egg: [7.3, 52.1], larva: [7.4, 140.13], pupa: [7.85, 68.75]},
  },
  {
    source:
      'Wermelinger & Seifert 1998, J. Appl. Entomol. 122, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'ips-typographus',
    stages: {egg: [9.46, 60.37], larva: [5.54, 263.2], pupa: [11.55, 46.04]},
  },
  {
    source:
      'Calvin and others 1984, Environ. Entomol. 13, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'trichogramma-pretiosum',
    stages: {egg: [13.2, 15.7], larva: [12.2, 62.2], pupa: [13.4, 49.2]},
  },
  {
    source:
      'Minkenberg & Helderman 1990, J. Econ. Entomol. 83, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'liriomyza-bryoniae',
    stages: {egg: [5.5, 59], larva: [8.8, 84.2], pupa: [8.2, 157.1]},
  },
  {
    source:
      'Lanzoni and others 2002, Environ. Entomol. 31, as compiled by Buckley and others 2017, Appendix S3 (seen)',
    profile: 'liriomyza-huidobrensis',
    stages: {egg: [8.1, 39.1], larva: [7.7, 106], pupa: [7.3, 156.3]},
  },
];

describe('at 20 °C a stage takes constant / (20 − threshold) days, as printed', () => {
  it.each(printed)('$profile: $source', ({profile, stages}) => {
    expect(taxon(profile).stages.map(({stage}) => stage)).toEqual(Object.keys(stages));
    for (const [stage, [lower, degreeDays]] of Object.entries(stages))
      expect(Math.abs(daysAt(profile, stage, 20) / (degreeDays! / (20 - lower!)) - 1)).toBeLessThan(1e-12);
  });
});
