// Labels that were printed for specimens.
import * as z from 'zod';
import {code, common, instant} from './fields.ts';

/** In the order on the pin, the data nearest to the specimen; a vial has one label with everything. */
export const labelKind = z.enum(['data', 'rearing', 'determination', 'code', 'vial']);

/** Each text once, with the specimens of the lot it was printed for. A reprint is one more record. */
export const print = z.strictObject({
  record: z.literal('print'),
  ...common,
  lot: code,
  labels: z
    .array(
      z.strictObject({
        kind: labelKind,
        /** Line by line as it was meant, before lines were broken to fit. */
        text: z.array(z.string().max(2000)).min(1),
        for: z.array(code).min(1),
      }),
    )
    .min(1),
  at: instant.optional(),
});
