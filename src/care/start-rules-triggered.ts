// Start values of what is done when something has come true: once, or as long as it is so. All common practice, no source, where none is named.
import type {Rule} from '../records/state.ts';
import {startRules} from './start-rule.ts';

const WINTER =
  'twelve weeks at 3–5 °C where nothing is known: a house rule; Pieris napi needed 4–6 months at 4 °C (abstract seen). Warm a third first';
const ADULTS =
  'hairs and scales irritate; killing agents poison, burn or explode: follow their safety data sheets';
const MOULD = 'mould spores: open where there is a draught away from you, wear a mask if you react';

export const triggeredRules: readonly Rule[] = [
  ...startRules('part-pupae', 'cage', {
    when: {pupated: 0.5},
    days: [0, 2, 5],
    minutes: 10,
    source:
      'hungry siblings eat fresh pupae; pupae are left 3–5 days to harden first: common practice, no source',
  }),
  ...startRules('ready-exit', undefined, {
    when: {adultWithinDays: 3},
    days: [0, 1, 2],
    minutes: 3,
    harm: 'high',
  }),
  ...startRules('tend-subimago', undefined, {
    when: {subimago: true},
    days: [0, 0.5, 1],
    minutes: 3,
    harm: 'high',
    source:
      'subimago to imago within hours to 1–2 days (an encyclopedia’s summary, seen); the rest common practice',
  }),
  ...startRules('collect', undefined, {
    when: {hardened: true},
    days: [0, 1, 3],
    minutes: 5,
    harm: 'high',
    caution: ADULTS,
  }),
  ...(['cage', 'emergence-box'] as const).flatMap(type =>
    startRules('check-cold', type, {
      days: [10, 21, 28],
      minutes: 3,
      source: 'every 2–4 weeks in the cold: common practice, no source',
    }),
  ),
  ...startRules('bring-out', undefined, {
    when: {chilledWeeks: 12},
    days: [0, 7, 28],
    minutes: 5,
    source: WINTER,
  }),
  ...startRules('look-at-mould', undefined, {
    when: {mould: true},
    days: [0.5, 1, 2],
    minutes: 2,
    caution: MOULD,
  }),
];
