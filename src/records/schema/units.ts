// The room's furniture and its people: units, opening hours, persons.
import * as z from 'zod';
import {clockTime, code, common, day, instant, temperatureC, text} from './fields.ts';

export const unitType = z.enum(['cage', 'aquarium', 'emergence-box']);

/** What the unit is set to: one temperature, day and night, or whatever the room or the outdoors gives. */
export const setPoints = z.union([
  z.strictObject({constant: temperatureC}),
  z.strictObject({day: temperatureC, night: temperatureC, lightsOn: clockTime, lightsOff: clockTime}),
  z.strictObject({ambient: z.literal(true)}),
]);

export const unit = z.strictObject({
  record: z.literal('unit'),
  ...common,
  code,
  /** Given at the first, as is the place; a later record gives what has changed. */
  type: unitType.optional(),
  /** Where it stands, from large to small: "rack A/2". Walking order follows it. */
  place: text.optional(),
  logger: code.optional(),
  /** How much warmer the animals are than the logger (lamp, water). */
  offsetC: z.number().min(-30).max(30).optional(),
  volumeLitres: z.number().positive().optional(),
  /** Air is blown into its water all day. */
  aerated: z.boolean().optional(),
  /** Nothing is put in before: it still dries, or its water matures. */
  freeFrom: instant.optional(),
  setPoints: setPoints.optional(),
  light: z.strictObject({on: clockTime, off: clockTime}).optional(),
  at: instant.optional(),
});

const hours = z.string().regex(/^([01]\d|2[0-3]):[0-5]\d-([01]\d|2[0-3]):[0-5]\d$/, {
  error: 'opening hours are written hh:mm-hh:mm, such as 08:00-17:00',
});

export const weekday = z.enum(['mon', 'tue', 'wed', 'thu', 'fri', 'sat', 'sun']);

/** Opening hours by weekday (a day without hours is closed), and closed spans with their reason. */
export const calendar = z.strictObject({
  record: z.literal('calendar'),
  ...common,
  open: z.partialRecord(weekday, z.array(hours)).optional(),
  closed: z.array(z.strictObject({from: day, to: day, why: text.optional()})).optional(),
  at: instant.optional(),
});

export const person = z.strictObject({
  record: z.literal('person'),
  ...common,
  name: text,
  days: z.array(weekday).optional(),
  places: z.array(text).optional(),
  /** Minutes a day that this person has for care. */
  minutes: z.number().positive().optional(),
  at: instant.optional(),
});
