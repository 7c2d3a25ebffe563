// Published mean days at constant temperatures, stage by stage: what the profiles made of them must give back.

/** Mean days of one stage at rising temperatures. */
export interface StageTable {
  readonly profile: string;
  readonly stage: string;
  readonly temperatureC: readonly number[];
  readonly days: readonly number[];
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
    temperatureC: [10.3, 14.94, 19.39, 24.79, 28.01, 31.4, 35.05],
    days: [27.4, 10.02, 5.84, 3.33, 2.92, 2.9, 3.04],
  },
  {
    profile: 'pieris-rapae',
    stage: 'larva',
    temperatureC: [10.15, 14.93, 19.34, 24.71, 28.12, 31.58, 35.06],
    days: [76.5, 31.98, 18.32, 11.56, 9.06, 8.6, 10.6],
  },
  {
    profile: 'pieris-rapae',
    stage: 'pupa',
    temperatureC: [10.09, 14.94, 19.26, 24.51, 28.07, 31.45, 35.1],
    days: [53.18, 20.21, 11.3, 7.14, 5.86, 5.57, 6.89],
  },
  {
    profile: 'pieris-napi',
    stage: 'egg',
    temperatureC: [10.86, 15.11, 20.03, 24.95, 28.1, 30.39, 31.32],
    days: [21.29, 8.17, 5.76, 3.7, 2.86, 2.91, 2.76],
  },
  {
    profile: 'pieris-napi',
    stage: 'larva',
    temperatureC: [10.88, 14.77, 20.1, 24.6, 28.02, 30.4, 31.4],
    days: [66.62, 32.55, 19.76, 11.82, 9.93, 10.82, 10.7],
  },
  {
    profile: 'pieris-napi',
    stage: 'pupa',
    temperatureC: [10.86, 14.84, 20.18, 24.75, 28.1, 30.55, 31.32],
    days: [27.73, 17.0, 8.71, 6.17, 6.17, 5.52, 6.16],
  },
  {profile: 'pieris-brassicae', stage: 'larva', temperatureC: [12.5, 20, 30], days: [46.5, 19.6, 11.0]},
  {
    profile: 'spodoptera-frugiperda',
    stage: 'egg',
    temperatureC: [18, 22, 26, 30, 32],
    days: [6.3, 4, 3, 2, 2],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-1',
    temperatureC: [18, 22, 26, 30, 32],
    days: [4.9, 3.7, 3, 2.2, 2.7],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-2',
    temperatureC: [18, 22, 26, 30, 32],
    days: [4.9, 3, 2.1, 1.9, 1.3],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-3',
    temperatureC: [18, 22, 26, 30, 32],
    days: [5, 2.5, 2, 1.4, 1.1],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-4',
    temperatureC: [18, 22, 26, 30, 32],
    days: [5.2, 2.8, 2.2, 1.7, 1.5],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-5',
    temperatureC: [18, 22, 26, 30, 32],
    days: [6.2, 3.4, 2.3, 2.2, 1.8],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'larva-6',
    temperatureC: [18, 22, 26, 30, 32],
    days: [8.6, 5.1, 3.4, 2, 2.1],
  },
  {
    profile: 'spodoptera-frugiperda',
    stage: 'pupa',
    temperatureC: [18, 22, 26, 30, 32],
    days: [30.68, 17.06, 11.43, 9, 7.82],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'egg',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5],
    days: [4.1, 3.1, 2.9, 2.0, 2.0, 1.5, 1.3, 0.9],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-1',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30],
    days: [13.2, 11.8, 11.5, 6.4, 3.7, 3.3, 2.4],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-2',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30],
    days: [7.5, 6.3, 5.2, 4.1, 3.0, 3.0, 3.8],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-3',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5],
    days: [7.8, 6.2, 4.0, 4.0, 2.6, 2.0, 1.7, 1.7],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'larva-4',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5],
    days: [10.2, 8.3, 6.7, 3.9, 3.6, 4.0, 3.4, 2.6],
  },
  {
    profile: 'culex-pipiens-molestus',
    stage: 'pupa',
    temperatureC: [15, 17.5, 20, 22.5, 25, 27.5, 30, 32.5],
    days: [6.4, 4.4, 3.7, 2.7, 2.1, 1.5, 1.6, 1.2],
  },
  {
    profile: 'aedes-albopictus',
    stage: 'egg',
    temperatureC: [15, 20, 25, 30],
    days: [38.38, 19.09, 13.1, 10.44],
  },
  {
    profile: 'aedes-albopictus',
    stage: 'larva',
    temperatureC: [15, 20, 25, 30],
    days: [33.22, 15.0, 8.06, 6.16],
  },
  {profile: 'aedes-albopictus', stage: 'pupa', temperatureC: [15, 20, 25, 30], days: [8.15, 5.11, 2.6, 1.88]},
  {
    profile: 'tetranychus-urticae',
    stage: 'egg',
    temperatureC: [12.5, 15.0, 17.5, 20.0, 22.5, 25.0, 27.5, 30.0, 32.0, 35.0],
    days: [28.8, 16.8, 11.4, 7.6, 5.2, 4.6, 3.9, 3.0, 2.7, 2.1],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'larva',
    temperatureC: [12.5, 15.0, 17.5, 20.0, 22.5, 25.0, 27.5, 30.0, 32.0, 35.0],
    days: [11.6, 6.4, 4.6, 2.9, 2.3, 1.9, 1.4, 1.2, 1.1, 1.3],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'nymph-1',
    temperatureC: [12.5, 15.0, 17.5, 20.0, 22.5, 25.0, 27.5, 30.0, 32.0, 35.0],
    days: [9.5, 5.5, 3.8, 2.4, 2.0, 1.7, 1.3, 1.0, 0.9, 1.0],
  },
  {
    profile: 'tetranychus-urticae',
    stage: 'nymph-2',
    temperatureC: [12.5, 15.0, 17.5, 20.0, 22.5, 25.0, 27.5, 30.0, 32.0, 35.0],
    days: [11.7, 7.2, 5.1, 3.2, 2.7, 2.2, 2.0, 1.4, 1.2, 1.0],
  },
];
