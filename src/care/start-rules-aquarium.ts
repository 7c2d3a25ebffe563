// Start values for aquaria and other containers of water. Every one can be replaced by the room.
import type {Rule} from '../records/state.ts';
import {midges, mosquitoes} from './start-rations.ts';
import {startRules} from './start-rule.ts';

const MAINS =
  'electricity near water: unplug heater, pump and lamp before a hand goes in, use a residual-current device and drip loops, follow the local electrical rules';
const VECTORS =
  'mosquitoes may carry disease and are often regulated: lid on, double cage, count out and in; follow local rules';

const MOSQUITO_FOOD = 'fed twice daily: a laboratory timetable, zamanianlab.org (excerpt seen)';
const MOSQUITO_WATER =
  'water changed every second day lowers losses in a clean-water species: a text on Anopheles funestus rearing (excerpt seen); a third every 2–3 days for others is common practice';
const MOSQUITO_PUPAE =
  'pupae last about 2 days in the warm and adults may drown: an old technical manual, bookdome (excerpt seen)';
const MIDGES =
  'at least three feeds a week in sediment tests: OECD test guidelines 218 and 219 (from memory)';
const STREAM = 'water changed about weekly for stream insects, faqs.tips (excerpt seen)';
const DRAGONFLIES =
  'three feeds a week: rearing of Hine’s emerald, fumfs.org (excerpt seen); no ration: the most that a nymph of six species took was 47 mosquito larvae a day, Ilahi et al. (abstract seen)';
const EVAPORATION =
  'small open pools lost 3.7–4.2 mm a day outdoors: Hydrol. Process. 22, 4789 (excerpt seen); the days are common practice, no source';

const STREAM_INSECTS = ['ephemeroptera', 'plecoptera', 'trichoptera'] as const;

export const aquariumRules: readonly Rule[] = [
  ...startRules('feed', 'aquarium', {
    days: [1, 2, 4],
    harm: 'high',
    caution: 'too much food fouls the water: less than they clear in a day',
  }),
  ...startRules('feed', 'aquarium', {
    groups: ['culicidae'],
    days: [0.5, 1, 1.5],
    harm: 'high',
    caution: VECTORS,
    amount: mosquitoes.amount,
    source: `${MOSQUITO_FOOD}; ${mosquitoes.source}`,
  }),
  ...startRules('feed', 'aquarium', {
    groups: ['chironomidae'],
    days: [1, 2, 4],
    amount: midges.amount,
    harm: 'high',
    source: `${MIDGES}; ${midges.source}`,
  }),
  ...startRules('feed', 'aquarium', {groups: STREAM_INSECTS, days: [2, 3.5, 7]}),
  ...startRules('feed', 'aquarium', {
    groups: ['odonata'],
    days: [1, 2, 4],
    harm: 'high',
    source: DRAGONFLIES,
  }),

  ...startRules('clean', 'aquarium', {days: [1, 3, 5], minutes: 5, caution: MAINS}),
  ...startRules('clean', 'aquarium', {groups: ['culicidae'], days: [0.5, 1, 2], caution: VECTORS}),
  ...startRules('clean', 'aquarium', {
    groups: ['chironomidae'],
    days: [4, 7, 10],
    minutes: 5,
    caution: MAINS,
  }),
  ...startRules('clean', 'aquarium', {groups: STREAM_INSECTS, days: [2, 3.5, 7], minutes: 5, caution: MAINS}),
  ...startRules('clean', 'aquarium', {groups: ['odonata'], days: [0.5, 1, 2], caution: MAINS}),

  ...startRules('change-water', 'aquarium', {
    days: [4, 7, 10],
    amount: {share: 0.25},
    minutes: 10,
    harm: 'high',
    caution: MAINS,
  }),
  ...startRules('change-water', 'aquarium', {
    groups: ['culicidae'],
    days: [1, 2, 3],
    amount: {share: 1 / 3},
    minutes: 5,
    harm: 'high',
    caution: VECTORS,
    source: MOSQUITO_WATER,
  }),
  ...startRules('change-water', 'aquarium', {
    groups: ['chironomidae'],
    days: [4, 7, 10],
    amount: {share: 1 / 3},
    minutes: 10,
    caution: MAINS,
  }),
  ...startRules('change-water', 'aquarium', {
    groups: ['chironomidae'],
    suffix: 'pupae',
    stages: ['pupa'],
    days: [4, 7, 10],
    off: true,
  }),
  ...startRules('change-water', 'aquarium', {
    groups: STREAM_INSECTS,
    days: [5, 7, 9],
    amount: {share: 0.75},
    minutes: 10,
    harm: 'high',
    caution: MAINS,
    source: STREAM,
  }),
  ...startRules('change-water', 'aquarium', {
    groups: ['odonata'],
    days: [4, 7, 9],
    amount: {share: 0.25},
    minutes: 10,
    caution: MAINS,
  }),

  ...startRules('top-up', 'aquarium', {days: [1, 2, 4], minutes: 2, caution: MAINS, source: EVAPORATION}),
  ...startRules('top-up', 'aquarium', {
    groups: ['culicidae'],
    days: [0.5, 1, 2],
    minutes: 1,
    harm: 'high',
    caution: VECTORS,
  }),
  ...startRules('top-up', 'aquarium', {
    groups: STREAM_INSECTS,
    days: [1, 2, 3],
    minutes: 2,
    harm: 'high',
    caution: MAINS,
  }),

  ...startRules('check-air', 'aquarium', {days: [0.5, 1, 1.5], minutes: 1, harm: 'high', caution: MAINS}),
  ...startRules('check-air', 'aquarium', {groups: ['culicidae'], days: [0.5, 1, 1.5], off: true}),

  ...startRules('inspect', 'aquarium', {suffix: 'eggs', stages: ['egg'], days: [0.5, 1, 2], minutes: 1}),
  ...startRules('move-pupae', 'aquarium', {
    groups: ['culicidae'],
    stages: ['pupa'],
    days: [0.5, 1, 1.5],
    minutes: 5,
    harm: 'high',
    caution: VECTORS,
    source: MOSQUITO_PUPAE,
  }),

  ...startRules('look', 'aquarium', {days: [0.5, 1, 1.5], harm: 'high', minutes: 2}),
  ...startRules('look', 'aquarium', {suffix: 'nymphs', stages: ['nymph'], days: [3, 7, 10], minutes: 2}),
];
