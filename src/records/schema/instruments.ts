// Loggers and what is read off them: readings, extremes, water, and masks over bad spans.
import * as z from 'zod';
import {code, common, instant, rhPercent, temperatureC, text} from './fields.ts';

const doubtName = z.enum([
  'too-cold',
  'too-warm',
  'spike',
  'stuck',
  'jump',
  'bench',
  'sun',
  'out-of-water',
  'wet',
]);

const fileReading = z.strictObject({
  columns: text.optional(),
  format: text.optional(),
  zone: text.optional(),
  sensor: text.optional(),
  /** Day or month first, where a file alone cannot tell. */
  order: z.enum(['dmy', 'mdy', 'ymd']).optional(),
  /** The unit of files that do not name it. */
  unit: z.enum(['C', 'F', 'K']).optional(),
});

export const logger = z.strictObject({
  record: z.literal('logger'),
  ...common,
  code,
  name: text.optional(),
  /** Given at the first; a later record gives what has changed. */
  kind: z.enum(['automatic', 'extremes', 'hand']).optional(),
  /** A pause longer than this is a gap. Default 3 h, 26 h for a person's readings. */
  maxGapHours: z
    .number()
    .positive()
    .max(24 * 31)
    .optional(),
  /** So far from a reading its gaps are filled by the days around. Default 7 days. */
  maxFillDays: z.number().nonnegative().max(400).optional(),
  /** How its files are read: what a person chose once, and what the last file settled for the next. */
  reads: fileReading.optional(),
  /** The number of a rule by which its readings are doubted, or that the rule is off; see climate/doubt-rules.ts. */
  rules: z.partialRecord(doubtName, z.union([z.number(), z.literal('off')])).optional(),
  at: instant.optional(),
});

export const reading = z
  .strictObject({
    record: z.literal('reading'),
    ...common,
    logger: code,
    at: instant.optional(),
    temperature: temperatureC.optional(),
    humidity: rhPercent.optional(),
  })
  .refine(({temperature, humidity}) => temperature !== undefined || humidity !== undefined, {
    error: 'a reading needs a temperature, a humidity or both',
  });

/** What a minimum–maximum thermometer held between two looks. */
export const extremes = z
  .strictObject({
    record: z.literal('extremes'),
    ...common,
    logger: code,
    from: instant,
    to: instant,
    minimum: temperatureC,
    maximum: temperatureC,
    now: temperatureC.optional(),
    reset: z.boolean().optional(),
  })
  .refine(({minimum, maximum}) => minimum <= maximum, {
    path: ['minimum'],
    error: 'the minimum is above the maximum',
  });

export const water = z.strictObject({
  record: z.literal('water'),
  ...common,
  unit: code,
  at: instant.optional(),
  temperature: temperatureC.optional(),
  oxygenMgL: z.number().nonnegative().optional(),
  ph: z.number().min(0).max(14).optional(),
  ammoniaMgL: z.number().nonnegative().optional(),
  nitriteMgL: z.number().nonnegative().optional(),
  conductivityUScm: z.number().nonnegative().optional(),
  hardnessMgL: z.number().nonnegative().optional(),
  levelLitres: z.number().nonnegative().optional(),
});

/** A person's word that a span of readings is not to be trusted (`lift`: is to be trusted again). */
export const mask = z.strictObject({
  record: z.literal('mask'),
  ...common,
  logger: code,
  from: instant,
  to: instant,
  why: text,
  lift: z.boolean().default(false),
  at: instant.optional(),
});
