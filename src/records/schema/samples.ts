// The field sample: what was brought in, from where, how, by whom.
import * as z from 'zod';
import {code, common, day, instant, text} from './fields.ts';

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

/** What the catch fell into. Only `none` leaves no doubt that the animals are alive. */
export const medium = z.enum([
  'none',
  'water',
  'water-detergent',
  'brine',
  'glycol',
  'ethanol',
  'isopropanol',
  'ethyl-acetate',
  'chloroform',
  'cyanide',
  'formalin',
  'other',
]);

const dayOrInstant = z.union([day, instant], {error: 'a day (yyyy-mm-dd) or an instant is expected'});

export const place = z
  .strictObject({
    country: text.optional(),
    region: text.optional(),
    locality: text.optional(),
    latitude: z.number().min(-90).max(90).optional(),
    longitude: z.number().min(-180).max(180).optional(),
    uncertaintyM: z.number().positive().optional(),
    datum: text.optional(),
    elevationM: z.number().min(-500).max(9000).optional(),
  })
  .refine(({latitude, longitude}) => (latitude === undefined) === (longitude === undefined), {
    error: 'latitude and longitude go together',
  });

export const sample = z.strictObject({
  record: z.literal('sample'),
  ...common,
  code,
  collected: z.strictObject({from: dayOrInstant, to: dayOrInstant.optional()}),
  collectors: z.array(text).optional(),
  method,
  place: place.optional(),
  host: text.optional(),
  substrate: text.optional(),
  habitat: text.optional(),
  medium: medium.default('none'),
  permit: text.optional(),
  note: text.optional(),
  at: instant.optional(),
});
