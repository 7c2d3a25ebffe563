// What holds for the whole room, each until it is set otherwise.
import * as z from 'zod';
import {common, instant} from './fields.ts';

const DAYS_IN = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

const dayOfTheYear = z
  .string()
  .regex(/^\d{2}-\d{2}$/, {error: 'a day of the year is written mm-dd, such as 12-21'})
  .refine(
    text => {
      const [month = 0, day = 0] = text.split('-').map(Number);
      return day >= 1 && day <= (DAYS_IN[month - 1] ?? 0);
    },
    {error: 'there is no such day in the year'},
  );

/** A record sets what it gives and leaves the rest. */
export const setting = z.strictObject({
  record: z.literal('setting'),
  ...common,
  /** Whether forecasts begin from the pace and survival of the room's own finished lots, or as published. */
  finishedLots: z.enum(['used', 'left-out']).optional(),
  /** The day of midsummer where the animals come from; absent: by the latitude of their field sample. */
  midsummer: dayOfTheYear.optional(),
  at: instant.optional(),
});
