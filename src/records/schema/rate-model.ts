// A rate model as it is written down. What its numbers must keep to is known by thermal/; here it is only said.
import * as z from 'zod';
import {faultOf, type RateModelSpec} from '../../thermal/rate-model.ts';
import {refusalFor} from './wording.ts';

/** Few animals live beyond these; a figure beyond them is most often one in °F. */
const notFahrenheit = (least: number, most: number) =>
  z
    .number()
    .min(least, {error: `no threshold lies below ${least} °C`})
    .max(most, {error: `it is at most ${most} °C; were it °F? 50 °F are 10 °C, 86 °F are 30 °C`});

const lower = notFahrenheit(-30, 40);
const upper = notFahrenheit(-30, 70);
/** A temperature at which development was followed to its end. */
export const testedC = notFahrenheit(-10, 50);
const kelvin = z.number().positive();

const degreeDay = z.strictObject({
  kind: z.literal('degree-day'),
  lower,
  upper: upper.optional(),
  cutoff: z.enum(['horizontal', 'intermediate', 'vertical']).default('horizontal'),
  degreeDays: z.number().positive(),
});

const table = z.strictObject({
  kind: z.literal('table'),
  points: z.array(z.strictObject({temperature: testedC, days: z.number().positive()})).min(2),
  lower,
  upper,
});

const briere1 = z.strictObject({kind: z.literal('briere-1'), a: z.number().positive(), lower, upper});
const briere2 = z.strictObject({
  kind: z.literal('briere-2'),
  a: z.number().positive(),
  lower,
  upper,
  m: z.number().positive(),
});

/** °C from which temperatures count. */
const base = z.number().min(-30).max(40);
const exponentials = {
  rho: z.number().positive(),
  upper: z.number().max(100),
  delta: z.number().positive(),
};
const lactin1 = z.strictObject({kind: z.literal('lactin-1'), ...exponentials, base: base.optional()});
const lactin2 = z.strictObject({kind: z.literal('lactin-2'), ...exponentials, lambda: z.number()});
const logan6 = z.strictObject({
  kind: z.literal('logan-6'),
  psi: z.number().positive(),
  ...exponentials,
  base: base.optional(),
});

const schoolfield = z.strictObject({
  kind: z.literal('schoolfield'),
  rho25: z.number().positive(),
  ha: z.number().positive().max(1e6),
  tl: kelvin.optional(),
  hl: z.number().optional(),
  th: kelvin.optional(),
  hh: z.number().optional(),
  refK: z.number().min(200, {error: 'it is in kelvin: 25 °C are 298.15 K'}).max(400).optional(),
});

export const rateModel = z
  .discriminatedUnion('kind', [degreeDay, table, briere1, briere2, lactin1, lactin2, logan6, schoolfield])
  .superRefine((spec: RateModelSpec, context) => {
    const fault = faultOf(spec);
    if (fault === undefined) return;
    const path = fault.field.split('.').map(part => (/^\d+$/.test(part) ? Number(part) : part));
    context.addIssue({code: 'custom', path, message: `${path.at(-1)} ${fault.what}`, input: spec});
  });

/**
 * Check a rate model that came from outside.
 * @param where how to name it to a person
 * @throws Refusal naming the field, what was expected, and what stands there
 */
export function parseRateModel(value: unknown, where: string): RateModelSpec {
  const result = rateModel.safeParse(value);
  if (result.success) return result.data;
  throw refusalFor(result.error, value, where);
}
