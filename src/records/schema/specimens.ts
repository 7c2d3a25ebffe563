// What happens to a specimen after it was found: prepared and stored.

import * as z from 'zod';
import {PREPARATIONS} from '../vocabulary.ts';
import {code, common, instant, text} from './fields.ts';

export const preparationMethod = z.enum(PREPARATIONS);

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
