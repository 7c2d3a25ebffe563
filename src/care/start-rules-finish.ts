// What is left to do when the last animal of a counted lot is out or accounted for. Common practice, no source.
import type {Rule} from '../records/state.ts';
import {startRules} from './start-rule.ts';

/** Tasks that end a lot, done once each. */
export const finishTasks = ['label', 'freeze-waste', 'clean-out', 'close'] as const;

const FREEZER =
  'waste may hold living eggs, mites or parasitoids: freeze or heat it before it leaves the room, follow local rules on releases';
const DISINFECT = 'cleaning agents: gloves and fresh air, never mix them, follow their safety data sheets';

export const finishRules: readonly Rule[] = [
  ...startRules('label', undefined, {days: [0, 1, 3], harm: 'high', minutes: 15}),
  ...startRules('freeze-waste', undefined, {days: [0, 1, 3], minutes: 3, caution: FREEZER}),
  ...startRules('clean-out', undefined, {days: [0, 1, 7], minutes: 15, caution: DISINFECT}),
  ...startRules('close', undefined, {days: [0, 1, 7], harm: 'low', minutes: 2}),
];
