// Lots and everything that happens to their animals, up to the specimen and its name.
import * as z from 'zod';
import {
  animal,
  code,
  codeElse,
  common,
  day,
  instant,
  positiveWhole,
  stage,
  stageCounts,
  temperatureC,
  text,
  wholeNumber,
} from './fields.ts';

/** A profile this lot may belong to, with its weight; weights need not sum to one. */
export const candidate = z.strictObject({profile: code, weight: z.number().nonnegative().default(1)});

export const candidates = z
  .array(candidate)
  .refine(list => list.length === 0 || list.some(({weight}) => weight > 0), {
    error: 'the weights of the candidates sum to zero',
  })
  .refine(list => new Set(list.map(({profile}) => profile)).size === list.length, {
    error: 'a profile is named twice',
  });

/** How far through their stage the animals may be at the start, from 0 (just moulted) to 1 (about to moult). */
export const progress = z
  .tuple([z.number().min(0).max(1), z.number().min(0).max(1)], {
    error: 'progress is two shares between 0 and 1, such as [0, 0.2]',
  })
  .refine(([from, to]) => from <= to, {error: 'progress runs from the smaller to the larger share'});

/** Galls, wood, litter, fruit: what is counted when the animals are hidden. */
export const material = z.strictObject({what: text, amount: z.number().positive(), unit: text});

/** What the animals ask of the unit they live in, and do to others there, where it is not as their profile says. */
export const needs = z
  .strictObject({
    /** Room for one of them. */
    litresEach: z.number().positive().optional(),
    coolestC: temperatureC.optional(),
    warmestC: temperatureC.optional(),
    /** Its water needs air all day. */
    aerated: z.boolean().optional(),
    /** They eat other animals of their unit. */
    predatory: z.boolean().optional(),
    /** They may live beside animals that eat others. */
    besideEaters: z.boolean().optional(),
  })
  .refine(({coolestC, warmestC}) => (coolestC ?? -Infinity) < (warmestC ?? Infinity), {
    path: ['warmestC'],
    error: 'the warmest is above the coolest',
  });

export const lot = z
  .strictObject({
    record: z.literal('lot'),
    ...common,
    code,
    sample: code.optional(),
    /** Eggs laid here: the female specimen, or the lot she belongs to. */
    from: z.union([z.strictObject({specimen: code}), z.strictObject({lot: code})]).optional(),
    unit: code,
    taxon: text.optional(),
    at: instant.optional(),
    stages: stageCounts.optional(),
    material: material.optional(),
    progress: progress.default([0, 1]),
    ages: z.enum(['mixed', 'one-brood']).default('mixed'),
    counted: z.enum(['exact', 'estimated', 'unknown']).default('exact'),
    /** How far off an estimated number may be, either way. */
    within: positiveWhole.optional(),
    candidates: candidates.default([]),
    needs: needs.optional(),
    /** The animals were seen alive although the trap held water. */
    foundAlive: z.boolean().optional(),
    note: text.optional(),
  })
  .refine(({sample, from}) => (sample === undefined) !== (from === undefined), {
    path: ['sample'],
    error: 'a lot comes either from a field sample ("sample") or from eggs laid here ("from")',
  })
  .refine(({stages, material}) => (stages === undefined) !== (material === undefined), {
    path: ['stages'],
    error: 'a lot has either animals by stage ("stages") or material whose animals are hidden ("material")',
  })
  .refine(({counted, within}) => within === undefined || counted === 'estimated', {
    path: ['within'],
    error: 'only an estimated number has a "within"',
  });

const about = (record: string) => ({
  record: z.literal(record),
  ...common,
  ...animal,
  lot: code,
  at: instant.optional(),
});

export const count = z.strictObject({
  ...about('count'),
  record: z.literal('count'),
  stages: stageCounts,
  /** All animals were looked at. Default: true when the total equals the number alive. */
  complete: z.boolean().optional(),
});

/** A look for adults, and how many were found (0 is an answer). Adults found are recorded as an emergence. */
export const check = z.strictObject({
  ...about('check'),
  record: z.literal('check'),
  found: wholeNumber.default(0),
});

/** Larvae or nymphs that hatched: out of the eggs counted in the lot first, the rest from eggs not counted before. */
export const hatch = z.strictObject({
  ...about('hatch'),
  record: z.literal('hatch'),
  count: positiveWhole,
  /** What they hatched as. Default: the first stage after the egg, as the lot and its candidates have it. */
  stage: stage.optional(),
});

export const found = z.strictObject({
  ...about('found'),
  record: z.literal('found'),
  stage,
  count: positiveWhole,
  why: text.optional(),
});

export const loss = z.strictObject({
  ...about('loss'),
  record: z.literal('loss'),
  stage: stage.optional(),
  count: positiveWhole,
  cause: z.enum(['dead', 'escaped', 'eaten', 'missing', 'given', 'other']).default('other'),
  note: text.optional(),
});

export const sex = z.enum(['female', 'male', 'unknown']);

/** One vial for all, with one code, in place of a code for each. */
const together = z.boolean().optional();

/**
 * Animals preserved as evidence: immatures of a lot, or whatever was taken out of a field sample dead. One is
 * `specimen`, several are `codes`.
 */
export const voucher = z
  .strictObject({
    ...about('voucher'),
    record: z.literal('voucher'),
    lot: code.optional(),
    sample: code.optional(),
    stage: z.union([stage, z.literal('adult')]).optional(),
    sex: sex.optional(),
    taxon: text.optional(),
    count: positiveWhole.default(1),
    together,
    specimen: code.optional(),
    codes: z.array(code).optional(),
    /** It fed on what was dead among the animals of this lot, and came out there. */
    scavengerIn: code.optional(),
  })
  .refine(({lot, sample}) => (lot === undefined) !== (sample === undefined), {
    path: ['lot'],
    error: 'a voucher comes either from a lot ("lot") or straight out of a field sample ("sample")',
  })
  .refine(({sample, scavengerIn}) => scavengerIn === undefined || sample !== undefined, {
    path: ['scavengerIn'],
    error: 'a scavenger belongs to the field sample ("sample"), not to the animals of the lot',
  });

export const move = z.strictObject({...about('move'), record: z.literal('move'), unit: code});

export const split = z.strictObject({
  ...about('split'),
  record: z.literal('split'),
  into: code,
  unit: code.optional(),
  stages: stageCounts,
});

export const merge = z.strictObject({...about('merge'), record: z.literal('merge'), into: code});

/** What is kept with an adult: how surely it belongs is 1 same animal, 2 same container and day, 3 same lot, 4 assumed. */
const keptPart = z.strictObject({
  code,
  association: z.int().min(1).max(4).optional(),
  what: z.enum(['exuviae', 'puparium', 'cocoon', 'gall', 'mine', 'host-remains', 'other']).optional(),
});

const fate = z.enum(['kept', 'killed', 'released', 'dead']);

export const emergence = z.strictObject({
  ...about('emergence'),
  record: z.literal('emergence'),
  lot: codeElse(
    'an adult is entered from the lot that it came out of: give its "lot", and its "animal" where it has a vial of its own',
  ),
  /** Last look at which they were not out. Default: the last check. */
  since: instant.optional(),
  /** Those that differ from the others in fate or condition say so themselves. */
  adults: z
    .array(
      z.strictObject({
        sex: sex.default('unknown'),
        count: positiveWhole,
        fate: fate.optional(),
        condition: text.optional(),
      }),
    )
    .min(1),
  fate: fate.default('kept'),
  condition: text.optional(),
  /** A mayfly's first winged form is its emergence. */
  as: z.enum(['adult', 'subimago']).default('adult'),
  /** The vial with the cast skin or puparium. */
  exuviae: keptPart.optional(),
  codes: z.array(code).optional(),
});

/** The final moult of a mayfly already recorded as subimago. Adds no animal. */
export const imago = z.strictObject({
  record: z.literal('imago'),
  ...common,
  specimen: code,
  /** The vial with the skin of the subimago. */
  exuviae: keptPart.optional(),
  at: instant.optional(),
});

/** Parasitoids out of hosts of the lot: a product of its hosts, not survivors. */
export const parasitoid = z.strictObject({
  ...about('parasitoid'),
  record: z.literal('parasitoid'),
  since: instant.optional(),
  taxon: text.optional(),
  count: positiveWhole,
  hostStage: stage.optional(),
  hosts: wholeNumber.default(1),
  sex: sex.optional(),
  /** They came out of parasitoids of the hosts. */
  hyper: z.boolean().optional(),
  /** What the primary parasitoid is or was, as known: a name, or the code of one of its specimens. */
  outOf: text.optional(),
  /** The vial with cocoon or remains of the host. */
  remains: keptPart.optional(),
  /** The vial with their cocoon, where it is kept apart from the remains. */
  cocoon: keptPart.optional(),
  together,
  codes: z.array(code).optional(),
});

export const identification = z.strictObject({
  record: z.literal('identification'),
  ...common,
  specimen: code,
  taxon: text,
  /** How sure it is, as taxonomists write it. None: no doubt. */
  qualifier: z.enum(['cf.', 'aff.', '?']).optional(),
  rank: text.optional(),
  by: text.optional(),
  on: day.optional(),
  note: text.optional(),
  at: instant.optional(),
});

/** A lot's name, or what it may be, seen anew: after an identification, or because somebody knows better. */
export const revision = z
  .strictObject({
    ...about('revision'),
    record: z.literal('revision'),
    taxon: text.optional(),
    candidates: candidates.optional(),
    /** What its animals need, by what changes; null: all as their profile says again. */
    needs: needs.nullable().optional(),
    /** The specimen whose identification gives the name; without "taxon" it is named as that is. */
    specimen: code.optional(),
    why: text.optional(),
  })
  .refine(
    ({taxon, candidates, needs, specimen}) =>
      (taxon ?? candidates ?? specimen) !== undefined || needs !== undefined,
    {
      path: ['taxon'],
      error:
        'a revision gives the lot a "taxon", a "specimen" it is named after, "candidates", or its "needs"',
    },
  );

export const close = z.strictObject({...about('close'), record: z.literal('close'), reason: text.optional()});
