// The field sample: what was brought in, from where, how, by whom.

import * as z from 'zod';
import {MEDIUMS} from '../vocabulary.ts';
import {code, common, day, instant, positiveWhole, temperatureC, text, wholeNumber} from './fields.ts';

/** The collecting methods of the trade; from `search` on, by hand. */
export const method = z.enum([
  'pitfall',
  'light',
  'yellow-pan',
  'sticky',
  'band',
  'bait',
  'pheromone',
  'suction',
  'window',
  'malaise',
  'search',
  'sweep',
  'beating',
  'dip-net',
  'kick-net',
  'litter',
  'wood',
  'gall',
  'fruit',
  'leaf-mine',
  'other',
]);

export const medium = z.enum(MEDIUMS);

export const dayOrInstant = z.union([day, instant], {error: 'a day (yyyy-mm-dd) or an instant is expected'});

export const place = z
  .strictObject({
    country: text.optional(),
    region: text.optional(),
    locality: text.optional(),
    latitude: z.number().min(-90).max(90).optional(),
    longitude: z.number().min(-180).max(180).optional(),
    uncertaintyM: z.number().positive().optional(),
    datum: text.optional(),
    /** The coordinates as they stand in the field book, such as 46° 14′ 59″ N, 8° 1′ 2″ E. */
    verbatimCoordinates: text.optional(),
    elevationM: z.number().min(-500).max(9000).optional(),
  })
  .refine(({latitude, longitude}) => (latitude === undefined) === (longitude === undefined), {
    error: 'latitude and longitude go together',
  });

/** How the trap was. Which of the fields a method has stands in records/methods.ts. */
export const trap = z.strictObject({
  /** When it was emptied before; the animals of this sample came after that. Default: when it was set. */
  lastEmptied: dayOrInstant.optional(),
  /** How many of them make up the sample. */
  traps: positiveWhole.optional(),
  bait: text.optional(),
  /** When the bait or lure was put out: nothing in it is older. */
  baitSince: day.optional(),
  lamp: text.optional(),
  meshMm: z.number().positive().optional(),
  /** Width of a pan, cup, funnel, net or pane. */
  acrossCm: z.number().positive().optional(),
  /** Width of a band, and how often it goes round. */
  widthCm: z.number().positive().optional(),
  turns: positiveWhole.optional(),
  /** Above the ground or, negative, below it or the water. */
  heightM: z.number().min(-100).max(100).optional(),
});

export const sample = z.strictObject({
  record: z.literal('sample'),
  ...common,
  code,
  /** Of a trap: from when it was set to when it was emptied. */
  collected: z.strictObject({from: dayOrInstant, to: dayOrInstant.optional()}),
  collectors: z.array(text).optional(),
  method,
  trap: trap.optional(),
  place: place.optional(),
  /** Host plant or host animal. */
  host: text.optional(),
  /** Which part of it: leaf, stem, root, fruit, nest … */
  hostPart: text.optional(),
  substrate: text.optional(),
  habitat: text.optional(),
  medium: medium.default('none'),
  permit: text.optional(),
  weather: text.optional(),
  waterC: temperatureC.optional(),
  /** How much was brought in: 40 galls, 1.2 kg of fruit, 5 litres of litter. */
  amount: z.strictObject({amount: z.number().positive(), unit: text}).optional(),
  /** Found dead when it arrived. */
  deadOnArrival: wholeNumber.optional(),
  note: text.optional(),
  at: instant.optional(),
});

/** A part of a field sample that is sorted by itself. What is not said of it is as in the whole. */
export const subsample = z.strictObject({
  record: z.literal('subsample'),
  ...common,
  code,
  /** The field sample, or a part of one, that it is a part of. */
  of: code,
  /** Which part: "upper layer", "tray 2", "a quarter by weight". */
  part: text.optional(),
  /** What share of the whole, above 0 and at most 1. */
  share: z.number().positive().max(1).optional(),
  host: text.optional(),
  hostPart: text.optional(),
  substrate: text.optional(),
  note: text.optional(),
  at: instant.optional(),
});

/** Animals that were not looked for, and what was done with them. */
export const bycatch = z.strictObject({
  record: z.literal('bycatch'),
  ...common,
  sample: code,
  what: text,
  kind: z
    .enum(['reptile', 'amphibian', 'small-mammal', 'bird', 'fish', 'arthropod', 'other'])
    .default('other'),
  count: positiveWhole.default(1),
  alive: z.boolean().optional(),
  /** Released, kept, passed on, discarded … */
  done: text,
  at: instant.optional(),
});

/** How far a sample is sorted. */
export const sorting = z.strictObject({
  record: z.literal('sorting'),
  ...common,
  sample: code,
  state: z.enum(['unsorted', 'partly', 'sorted']),
  note: text.optional(),
  at: instant.optional(),
});
