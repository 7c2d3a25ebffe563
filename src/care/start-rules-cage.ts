// Start values for cages and other containers of animals that feed on land. Every one can be replaced by the room.
import type {Rule} from '../records/state.ts';
import {carrionFlies, crickets, ladybirds, noctuids, predatoryMites} from './start-rations.ts';
import {startRules} from './start-rule.ts';

const HAIRS = 'hairs and frass irritate skin, eyes and lungs: gloves, and do not brush the cage out dry';
const FRASS = 'frass and mould dust irritate the lungs: work damp, wear a mask if you react';
const BITES = 'may bite: long forceps, no bare fingers; follow the room’s rules for venomous kinds';
const CARRION = 'carrion carries germs: gloves, wash hands, keep away from food and from human living space';

const GUIDE =
  'a simple guide to rearing caterpillars and parasitoids, microgastrinae.myspecies.info (excerpt seen)';
const LATE_EATERS =
  'the last two instars eat 90–95 % of the leaf: Khafagi et al. 2016, J. Agric. Sci. Food Technol. (excerpt seen); the days are common practice, no source';
const LADYBIRDS = 'fed daily in single tubes: Ramos et al. 2014, Adv. Entomol. 2, 42 (excerpt seen)';
const CRICKETS =
  'water always at hand: an abstract on Acheta rearing methods (excerpt seen); the days are common practice, no source';
const FLY_VIALS =
  'stock moved every 20–30 days, never over 30 at room temperature: a Drosophila stock-keeping page (excerpt seen); new vial every 2–3 weeks is common practice; 10 mL a vial: a page on Drosophila cultures, asaapestcontrol.com (excerpt seen)';
const SPIDERS =
  'days: common practice, no source; one prey at a time is enough for most wolf spiders, large ones one a day: a text on keeping wolf spiders, fedest.com (seen)';

const CATERPILLARS = ['lepidoptera'] as const;
const NOCTUIDS = ['noctuidae'] as const;
const LATE_INSTARS = ['larva-4', 'larva-5', 'larva-6', 'larva-7', 'larva-8'] as const;
const CARRION_FLIES = ['carrion-flies', 'calliphoridae', 'sarcophagidae'] as const;
const LEAF_MITES = ['tetranychidae', 'phytoseiidae'] as const;

export const cageRules: readonly Rule[] = [
  ...startRules('feed', 'cage', {days: [1, 2, 3], harm: 'high'}),
  ...startRules('feed', 'cage', {
    groups: CATERPILLARS,
    days: [1, 2, 3],
    harm: 'high',
    caution: HAIRS,
    source: GUIDE,
  }),
  ...startRules('feed', 'cage', {
    groups: CATERPILLARS,
    suffix: 'late',
    stages: LATE_INSTARS,
    days: [0.5, 1, 1.5],
    harm: 'high',
    caution: HAIRS,
    source: LATE_EATERS,
  }),
  ...startRules('feed', 'cage', {
    groups: NOCTUIDS,
    days: [1, 2, 3],
    amount: noctuids.amount,
    harm: 'high',
    caution: HAIRS,
    source: `${GUIDE}; ${noctuids.source}`,
  }),
  ...startRules('feed', 'cage', {
    groups: NOCTUIDS,
    suffix: 'late',
    stages: LATE_INSTARS,
    days: [0.5, 1, 1.5],
    amount: noctuids.amount,
    harm: 'high',
    caution: HAIRS,
    source: `${LATE_EATERS}; ${noctuids.source}`,
  }),
  ...startRules('feed', 'cage', {
    groups: ['coccinellidae'],
    days: [0.5, 1, 1.5],
    amount: ladybirds.amount,
    harm: 'high',
    source: `${LADYBIRDS}; ${ladybirds.source}`,
  }),
  ...startRules('feed', undefined, {
    groups: CARRION_FLIES,
    days: [0.5, 1, 1.5],
    amount: carrionFlies.amount,
    harm: 'high',
    minutes: 4,
    caution: CARRION,
    source: `days: common practice, no source; ${carrionFlies.source}`,
  }),
  ...startRules('feed', 'cage', {groups: ['orthoptera'], days: [0.5, 1, 2], harm: 'high'}),
  ...startRules('feed', 'cage', {
    groups: ['gryllidae'],
    days: [0.5, 1, 2],
    amount: crickets.amount,
    harm: 'high',
    source: `days: common practice, no source; ${crickets.source}`,
  }),
  ...startRules('feed', 'cage', {
    groups: ['araneae', 'opiliones'],
    days: [1.5, 2.5, 7],
    amount: {each: 1, of: 'prey'},
    caution: BITES,
    source: SPIDERS,
  }),
  ...startRules('feed', 'cage', {
    groups: ['drosophilidae'],
    days: [10, 17, 30],
    amount: {whole: 10, of: 'mL medium'},
    source: FLY_VIALS,
  }),
  ...startRules('feed', 'cage', {groups: ['stored-product-beetles'], days: [28, 42, 56], caution: FRASS}),
  ...startRules('feed', 'cage', {groups: ['tetranychidae'], days: [3, 5, 7]}),
  ...startRules('feed', 'cage', {
    groups: ['phytoseiidae'],
    days: [3, 5, 7],
    amount: predatoryMites.amount,
    source: `days: common practice, no source; ${predatoryMites.source}`,
  }),

  ...startRules('give-water', 'cage', {
    groups: ['orthoptera'],
    days: [0.5, 1, 1.5],
    harm: 'high',
    minutes: 1,
    source: CRICKETS,
  }),
  ...startRules('give-water', 'cage', {
    groups: ['araneae', 'opiliones'],
    days: [2, 3.5, 5],
    harm: 'high',
    minutes: 1,
    caution: BITES,
  }),

  ...startRules('clean', 'cage', {days: [1, 2, 4], harm: 'low', caution: FRASS}),
  ...startRules('clean', 'cage', {groups: CATERPILLARS, days: [1, 2, 3], caution: HAIRS, source: GUIDE}),
  ...startRules('clean', 'cage', {
    groups: CATERPILLARS,
    suffix: 'late',
    stages: LATE_INSTARS,
    days: [0.5, 1, 2],
    caution: HAIRS,
  }),
  ...startRules('clean', 'cage', {groups: ['coccinellidae'], days: [0.5, 1, 3]}),
  ...startRules('clean', 'cage', {groups: ['orthoptera'], days: [3, 5, 7], harm: 'low', caution: FRASS}),
  ...startRules('clean', 'cage', {
    groups: ['araneae', 'opiliones'],
    days: [20, 30, 45],
    harm: 'low',
    caution: BITES,
  }),
  ...startRules('clean', 'cage', {
    groups: ['drosophilidae', 'stored-product-beetles', ...LEAF_MITES],
    days: [3, 7, 14],
    harm: 'low',
    caution: FRASS,
    off: true,
  }),

  ...startRules('moisten', 'cage', {days: [1, 2, 4], minutes: 1}),
  ...startRules('moisten', 'cage', {
    groups: ['stored-product-beetles', 'drosophilidae'],
    days: [1, 2, 4],
    off: true,
  }),

  ...startRules('inspect', 'cage', {suffix: 'eggs', stages: ['egg'], days: [0.5, 1, 2], minutes: 1}),
  ...startRules('inspect', 'cage', {
    suffix: 'pupae',
    stages: ['pupa'],
    days: [4, 7, 14],
    minutes: 1,
    harm: 'low',
  }),
  ...startRules('inspect', 'cage', {
    groups: ['stored-product-beetles'],
    days: [4, 7, 14],
    minutes: 2,
    caution: FRASS,
  }),
  ...startRules('move-pupae', 'cage', {stages: ['prepupa'], days: [3, 4, 7], harm: 'low', minutes: 5}),

  ...startRules('look', 'cage', {days: [0.5, 1, 1.5], harm: 'high', minutes: 2}),
  ...startRules('look', 'cage', {suffix: 'nymphs', stages: ['nymph'], days: [3, 7, 10], minutes: 2}),
];
