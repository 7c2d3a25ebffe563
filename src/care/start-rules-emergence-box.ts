// Start values for emergence boxes: material held until adults appear. Nothing in them is fed by rule. Groups are
// collecting methods here, since nobody sees the animals. Every value can be replaced by the room.
import type {Rule} from '../records/state.ts';
import {startRules} from './start-rule.ts';

const MOULD = 'mould spores: open where there is a draught away from you, wear a mask if you react';
const ESCAPES =
  'beetles and parasitoids escape when a box is opened: open it inside a bag or net, tape the seams again';

const WOOD =
  'wood misted weekly: a page on rearing beetles from dead wood, sonorantreesvc.com (excerpt seen)';
const MINES =
  'vacated leaves and mouldy items out at once: advice of a leafminer specialist, Leps-L list, March 1999 (excerpt seen)';
const PUPAE =
  'pupae kept cold looked at every 1–2 months: a silkmoth rearing page, silkmoths.bizland.com (excerpt seen)';

export const emergenceBoxRules: readonly Rule[] = [
  ...startRules('moisten', 'emergence-box', {days: [4, 7, 10], minutes: 2, caution: MOULD}),
  ...startRules('moisten', 'emergence-box', {
    groups: ['wood'],
    days: [4, 7, 10],
    minutes: 3,
    harm: 'low',
    caution: MOULD,
    source: WOOD,
  }),
  ...startRules('moisten', 'emergence-box', {
    groups: ['leaf-mine'],
    days: [1, 3, 5],
    minutes: 1,
    caution: MOULD,
  }),

  ...startRules('clean', 'emergence-box', {days: [4, 7, 14], minutes: 4, caution: MOULD}),
  ...startRules('clean', 'emergence-box', {groups: ['fruit'], days: [0.5, 1, 2], minutes: 4, caution: MOULD}),
  ...startRules('clean', 'emergence-box', {
    groups: ['leaf-mine'],
    days: [1, 2, 3],
    minutes: 3,
    caution: MOULD,
    source: MINES,
  }),
  ...startRules('clean', 'emergence-box', {
    groups: ['wood'],
    days: [300, 365, 400],
    minutes: 20,
    harm: 'low',
    caution: MOULD,
  }),

  ...startRules('inspect', 'emergence-box', {
    suffix: 'pupae',
    stages: ['pupa', 'prepupa'],
    days: [21, 30, 60],
    minutes: 1,
    harm: 'low',
    source: PUPAE,
  }),

  ...startRules('look', 'emergence-box', {days: [3, 7, 10], minutes: 3, harm: 'high', caution: ESCAPES}),
  ...startRules('look', 'emergence-box', {
    groups: ['litter', 'fruit', 'leaf-mine'],
    days: [2, 3, 4],
    minutes: 3,
    harm: 'high',
    caution: ESCAPES,
  }),
];
