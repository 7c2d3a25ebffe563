// Entries about the daybook itself: notes, and the voiding of a wrong entry.
import * as z from 'zod';
import {animal, code, common, instant, text} from './fields.ts';

export const note = z.strictObject({
  record: z.literal('note'),
  ...common,
  ...animal,
  about: code.optional(),
  at: instant.optional(),
  text: text.optional(),
  photo: text.optional(),
  weightMg: z.number().positive().optional(),
});

/** Entries are only ever added; a wrong one is voided, with the reason, and stays readable. */
export const voiding = z.strictObject({
  record: z.literal('void'),
  ...common,
  entry: text,
  reason: text.optional(),
  /** Written by taking back a request. A later taking back passes over it and reaches what is older. */
  undo: z.boolean().optional(),
});
