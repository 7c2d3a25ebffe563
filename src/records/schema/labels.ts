// Labels that were printed for specimens.
import * as z from 'zod';
import {code, common, instant} from './fields.ts';

/** In the order on the pin, the data nearest to the specimen; a vial has one label with everything, that of exuviae too. */
export const labelKind = z.enum(['data', 'rearing', 'determination', 'code', 'vial', 'exuviae']);

/**
 * Each text once, with the specimens it was printed for: those of one lot, or those taken out of a field sample. A
 * reprint is one more record.
 */
export const print = z
  .strictObject({
    record: z.literal('print'),
    ...common,
    lot: code.optional(),
    sample: code.optional(),
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
  })
  .refine(({lot, sample}) => (lot === undefined) !== (sample === undefined), {
    path: ['lot'],
    error:
      'labels are for specimens of a lot ("lot"), or for those taken straight out of a field sample ("sample")',
  });
