// What happens to a specimen after it was found: prepared and stored.
import * as z from 'zod';
import {code, common, instant, text} from './fields.ts';

/** How it is made to last. */
export const preparationMethod = z.enum([
  'pinned',
  'pointed',
  'carded',
  'spread',
  'fluid',
  'slide',
  'papered',
  'dried',
  'frozen',
  'other',
]);

export const preparation = z.strictObject({
  record: z.literal('preparation'),
  ...common,
  specimen: code,
  method: preparationMethod.optional(),
  /** What it lies in, such as "ethanol 80 %". */
  medium: text.optional(),
  /** Where it is kept: "cabinet 3, drawer 12". */
  store: text.optional(),
  killedAt: instant.optional(),
  /** What it was killed with: "freezer", "ethyl acetate". */
  agent: text.optional(),
  note: text.optional(),
  at: instant.optional(),
});
