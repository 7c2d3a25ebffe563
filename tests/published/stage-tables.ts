// Published mean days at constant temperatures, stage by stage: what the profiles made of them must give back.

/** Temperature (°C) and mean days of one stage, with where they were published. */
export interface StageTable {
  readonly profile: string;
  readonly stage: string;
  readonly points: readonly (readonly [temperatureC: number, days: number])[];
}

/** Where the tables of each profile were published, and how they were seen. */
export const publishedIn: Readonly<Record<string, string>> = {
  'pieris-rapae':
    "von Schmalensee and others 2023, Nature Communications 14:3663, individual rates by treatment (authors' data file, seen; means computed)",
  'pieris-napi':
    "von Schmalensee and others 2023, Nature Communications 14:3663, individual rates by treatment (authors' data file, seen; means computed)",
  'pieris-brassicae': 'David & Gardiner 1962, Bulletin of Entomological Research 53:417-436, abstract (seen)',
  'spodoptera-frugiperda':
    'Du Plessis, Schlemmer & Van den Berg 2020, Insects 11:228, stage table (seen as transcribed in an open data entry)',
  'culex-pipiens-molestus':
    'Spanoudis and others 2019, Journal of Medical Entomology 56:641-650, differences of cumulative ages (seen as transcribed in an open data entry)',
  'aedes-albopictus':
    'Calado & Navarro-Silva 2002, Revista de Saúde Pública 36:173-179, abstract: females (seen)',
  'tetranychus-urticae':
    'Bayu and others 2017, Experimental and Applied Acarology 72:205-227, stage durations of females (seen as extracted in an open data file)',
};

export const stageTables: readonly StageTable[] = [
  {
    profile: 'pieris-rapae',
    stage: 'egg',
    points: [
      [10.3, 27.4],
      [14.94, 10.02],
      [19.39, 5.84],
      [24.79, 3.33],
      [28.01, 2.92],
      [31.4, 2.9],
      [35.05, 3.04],
    ],
  },
  {
    profile: 'pieris-rapae',
    stage: 'larva',
    points: [
      [10.15, 76.5],
      [14.93, 31.98],
      [19.34, 18.32],
      [24.71, 11.56],
      [28.12, 9.06],
      [31.58, 8.6],
      [35.06, 10.6],
    ],
  },
  {
    profile: 'pieris-rapae',
    stage: 'pupa',
    points: [
      [10.09, 53.18],
      [14.94, 20.21],
      [19.26, 11.3],
      [24.51, 7.14],
      [28.07, 5.86],
      [31.45, 5.57],
      [35.1, 6.89],
    ],
  },
  {
    profile: 'pieris-napi',
    stage: 'egg',
    points: [
      [10.86, 21.29],
      [15.11, 8.17],
      [20.03, 5.76],
      [24.95, 3.7],
      [28.1, 2.86],
      [30.39, 2.91],
      [31.32, 2.76],
    ],
  },
  {
    profile: 'pieris-napi',
    stage: 'larva',
    points: [
      [10.88, 66.62],
      [14.77, 32.55],
      [20.1, 19.76],
      [24.6, 11.82],
      [28.02, 9.93],
      [30.4, 10.82],
      [31.4, 10.7],
    ],
  },
  {
    profile: 'pieris-napi',
    stage: 'pupa',
    points: [
      [10.86, 27.73],
      [14.84, 17.0],
      [20.18, 8.71],
      [24.75, 6.17],
      [28.1, 6.17],
      [30.55, 5.52],
      [31.32, 6.16],
    ],
  },
  {
    profile: 'pieris-brassicae',
    stage: 'larva',
    points: [
      [12.5, 46.5],
      [20, 19.6],
      [30, 11.0],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'egg',
    points: [
      [18, 6.3],
      [22, 4],
      [26, 3],
      [30, 2],
      [32, 2],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-1',
    points: [
      [18, 4.9],
      [22, 3.7],
      [26, 3],
      [30, 2.2],
      [32, 2.7],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-2',
    points: [
      [18, 4.9],
      [22, 3],
      [26, 2.1],
      [30, 1.9],
      [32, 1.3],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-3',
    points: [
      [18, 5],
      [22, 2.5],
      [26, 2],
      [30, 1.4],
      [32, 1.1],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-4',
    points: [
      [18, 5.2],
      [22, 2.8],
      [26, 2.2],
      [30, 1.7],
      [32, 1.5],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-5',
    points: [
      [18, 6.2],
      [22, 3.4],
      [26, 2.3],
      [30, 2.2],
      [32, 1.8],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-6',
    points: [
      [18, 8.6],
      [22, 5.1],
      [26, 3.4],
      [30, 2],
      [32, 2.1],
    ],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'pupa',
    points: [
      [18, 30.68],
      [22, 17.06],
      [26, 11.43],
      [30, 9],
      [32, 7.82],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'egg',
    points: [
      [15, 4.1],
      [17.5, 3.1],
      [20, 2.9],
      [22.5, 2.0],
      [25, 2.0],
      [27.5, 1.5],
      [30, 1.3],
      [32.5, 0.9],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-1',
    points: [
      [15, 13.2],
      [17.5, 11.8],
      [20, 11.5],
      [22.5, 6.4],
      [25, 3.7],
      [27.5, 3.3],
      [30, 2.4],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-2',
    points: [
      [15, 7.5],
      [17.5, 6.3],
      [20, 5.2],
      [22.5, 4.1],
      [25, 3.0],
      [27.5, 3.0],
      [30, 3.8],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-3',
    points: [
      [15, 7.8],
      [17.5, 6.2],
      [20, 4.0],
      [22.5, 4.0],
      [25, 2.6],
      [27.5, 2.0],
      [30, 1.7],
      [32.5, 1.7],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-4',
    points: [
      [15, 10.2],
      [17.5, 8.3],
      [20, 6.7],
      [22.5, 3.9],
      [25, 3.6],
      [27.5, 4.0],
      [30, 3.4],
      [32.5, 2.6],
    ],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'pupa',
    points: [
      [15, 6.4],
      [17.5, 4.4],
      [20, 3.7],
      [22.5, 2.7],
      [25, 2.1],
      [27.5, 1.5],
      [30, 1.6],
      [32.5, 1.2],
    ],
  },
  {
    profile: 'aedes-albopictus',
    stage: 'egg',
    points: [
      [15, 38.38],
      [20, 19.09],
      [25, 13.1],
      [30, 10.44],
    ],
  },
  {
    profile: 'aedes-albopictus',
    stage: 'larva',
    points: [
      [15, 33.22],
      [20, 15.0],
      [25, 8.06],
      [30, 6.16],
    ],
  },
  {
    profile: 'aedes-albopictus',
    stage: 'pupa',
    points: [
      [15, 8.15],
      [20, 5.11],
      [25, 2.6],
      [30, 1.88],
    ],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'egg',
    points: [
      [12.5, 28.8],
      [15.0, 16.8],
      [17.5, 11.4],
      [20.0, 7.6],
      [22.5, 5.2],
      [25.0, 4.6],
      [27.5, 3.9],
      [30.0, 3.0],
      [32.0, 2.7],
      [35.0, 2.1],
    ],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'larva',
    points: [
      [12.5, 11.6],
      [15.0, 6.4],
      [17.5, 4.6],
      [20.0, 2.9],
      [22.5, 2.3],
      [25.0, 1.9],
      [27.5, 1.4],
      [30.0, 1.2],
      [32.0, 1.1],
      [35.0, 1.3],
    ],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'nymph-1',
    points: [
      [12.5, 9.5],
      [15.0, 5.5],
      [17.5, 3.8],
      [20.0, 2.4],
      [22.5, 2.0],
      [25.0, 1.7],
      [27.5, 1.3],
      [30.0, 1.0],
      [32.0, 0.9],
      [35.0, 1.0],
    ],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'nymph-2',
    points: [
      [12.5, 11.7],
      [15.0, 7.2],
      [17.5, 5.1],
      [20.0, 3.2],
      [22.5, 2.7],
      [25.0, 2.2],
      [27.5, 2.0],
      [30.0, 1.4],
      [32.0, 1.2],
      [35.0, 1.0],
    ],
  },
];
