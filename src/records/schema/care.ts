// Care: the rules, and what was done about them.
import * as z from 'zod';
import {code, common, instant, stage, text} from './fields.ts';
import {unitType} from './units.ts';

/** How often: in days, or in degree-days above a threshold so that feeding keeps up with warmth. */
export const interval = z.union([
  z.strictObject({days: z.number().positive()}),
  z.strictObject({degreeDays: z.number().positive(), lower: z.number()}),
]);

/** What makes a task needed once, in place of an interval; `every` then counts from when it came true. */
export const trigger = z.union([
  /** Such a share of a lot's animals was counted as pupae. */
  z.strictObject({pupated: z.number().positive().max(1)}),
  /** One animal in twenty is expected to be out within so many days. */
  z.strictObject({adultWithinDays: z.number().nonnegative()}),
  /** Adults that are kept have had the time that their kind needs to harden. */
  z.strictObject({hardened: z.literal(true)}),
  /** A mayfly's subimago is kept and has still to moult. */
  z.strictObject({subimago: z.literal(true)}),
  /** A lot has lived for so many weeks in a unit that is held cold. */
  z.strictObject({chilledWeeks: z.number().positive()}),
  /** Mould was seen, and not yet that it is gone. */
  z.strictObject({mould: z.literal(true)}),
]);

const positive = z.number().positive();

/**
 * How much: a share of the unit's water; so much for each animal that eats, the same for all or by stage; or so much
 * however many there are. `of` is the unit and the food, such as "mg food".
 */
export const amount = z.union([
  z.strictObject({share: positive.max(1)}),
  z.strictObject({
    /** By stage: an instar that is not named takes what the last one before it takes, else `larva` or `nymph`. */
    each: z.union([
      positive,
      z
        .record(stage, positive)
        .refine(stages => Object.keys(stages).length > 0, {error: 'no stage is given'}),
    ]),
    of: text,
    /** For each day until the next time, or for all the time that the animal feeds. Default: each time. */
    per: z.enum(['day', 'life']).optional(),
  }),
  z.strictObject({whole: positive, of: text}),
]);

/** What a person answers when a task is done: yes/no, a number, or a word. */
export const observation = z.union([z.boolean(), z.number(), z.string().max(500)]);

export const rule = z.strictObject({
  record: z.literal('rule'),
  ...common,
  code,
  task: text,
  /** What it is for; everything named must fit. Nearest wins: lot, unit, profile, group, type. */
  for: z
    .strictObject({
      type: unitType.optional(),
      unit: code.optional(),
      group: code.optional(),
      profile: code.optional(),
      lot: code.optional(),
      stages: z.array(stage).optional(),
    })
    .default({}),
  every: interval,
  when: trigger.optional(),
  amount: amount.optional(),
  earliestDays: z.number().nonnegative().optional(),
  latestDays: z.number().positive().optional(),
  harm: z.enum(['high', 'medium', 'low']).default('medium'),
  /** What must be answered when it is done. */
  observe: z.array(z.string().regex(/^[a-zA-Z][\w-]*$/)).default([]),
  caution: text.optional(),
  minutes: z.number().positive().optional(),
  source: text.optional(),
  off: z.boolean().default(false),
  at: instant.optional(),
});

const task = {unit: code.optional(), lot: code.optional(), task: text, at: instant.optional()};
const someone = ({unit, lot}: {unit?: string | undefined; lot?: string | undefined}) =>
  unit !== undefined || lot !== undefined;

export const care = z
  .strictObject({
    record: z.literal('care'),
    ...common,
    ...task,
    /** The answers, by what was asked. */
    seen: z.record(z.string(), observation).default({}),
  })
  .refine(someone, {path: ['unit'], error: 'name the unit, the lot or both'});

export const skip = z
  .strictObject({record: z.literal('skip'), ...common, ...task, why: text})
  .refine(someone, {path: ['unit'], error: 'name the unit, the lot or both'});

export const acknowledge = z.strictObject({
  record: z.literal('acknowledge'),
  ...common,
  alert: text,
  at: instant.optional(),
  done: text,
});
