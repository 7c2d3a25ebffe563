// What is known of the development of a taxon, each figure with its source.
import * as z from 'zod';
import {chainFault} from '../stage-gaps.ts';
import {SAT} from '../where-it-sat.ts';
import {amount} from './care.ts';
import {code, common, instant, rhPercent, stage, temperatureC, text} from './fields.ts';
import {rateModel, testedC} from './rate-model.ts';
import {method} from './samples.ts';

export const source = z.strictObject({
  id: z.string().min(1),
  citation: text,
  locator: text.optional(),
  provenance: z.enum(['seen', 'from-memory', 'common-practice', 'computed']),
  note: text.optional(),
});

export const spreadFamily = z.enum(['lognormal', 'gamma', 'weibull', 'normal']);

/** Individuals of one population; 3 to 15 % in well-fed cohorts, common practice without one source. */
const USUAL_CV = 0.12;

const stageModel = z.strictObject({
  stage,
  rate: rateModel,
  /** Coefficient of variation of an individual's dose. */
  cv: z.number().min(0).max(1).default(USUAL_CV),
  family: spreadFamily.default('lognormal'),
  /** Bundled profiles always name it; a person's own may not. */
  source: z.string().optional(),
  /** Source of the spread, where it is another one than the rate's. */
  spreadSource: z.string().optional(),
  /** Source of the limits that end the rate, where it is another one. */
  limitsSource: z.string().optional(),
});

/**
 * Days at constant temperatures as a source prints them, over one stage or several: what the profile is checked
 * against. Nothing is computed from them.
 */
const published = z.strictObject({
  from: stage,
  to: stage,
  points: z
    .array(
      z.strictObject({
        temperature: testedC,
        days: z.number().positive(),
        sd: z.number().nonnegative().optional(),
        n: z.int().positive().optional(),
      }),
    )
    .min(1),
  source: z.string(),
});

/** The fewest and the most; each number between is met. */
const instars = z.tuple([z.int().min(1), z.int().max(25)]).refine(([from, to]) => from <= to, {
  error: 'the number of instars runs from the smaller to the larger',
});

/** A share of the time from egg to adult; a larva or nymph is divided among its instars. */
const stageShare = z.strictObject({
  stage: z.enum(['egg', 'larva', 'nymph', 'prepupa', 'pupa']),
  share: z.number().positive().max(1),
  instars: instars.optional(),
  source: z.string(),
  instarsSource: z.string().optional(),
});

/** How the members of a group vary; see design of groups in development/. */
const variation = z.strictObject({
  /** ln of days from egg to adult at 20 °C. */
  lnDaysAt20: z.strictObject({mean: z.number(), sd: z.number().nonnegative()}),
  /** Lower threshold, °C. */
  lowerC: z.strictObject({mean: z.number(), sd: z.number().nonnegative()}),
  correlation: z.number().gt(-1).lt(1).default(0),
  /** Coefficient of variation of egg-to-adult time within one population. */
  cv: z.number().min(0).max(1).default(0.12),
  source: z.string(),
  correlationSource: z.string().optional(),
  cvSource: z.string().optional(),
});

const months = z.array(z.int().min(1).max(12)).min(1);

/** Chance that an animal in this stage is in diapause, by the month (1–12) in which it is found in it. */
const diapause = z.strictObject({
  stage,
  months,
  chance: z.number().min(0).max(1),
  source: z.string(),
  /** What ends it: so many days, or degree-days, below this temperature. */
  chill: z
    .strictObject({
      belowC: temperatureC,
      days: z.number().positive().optional(),
      degreeDays: z.number().positive().optional(),
      source: z.string(),
    })
    .refine(({days, degreeDays}) => (days === undefined) !== (degreeDays === undefined), {
      path: ['days'],
      error: 'cold is counted either in days or in degree-days below the limit',
    })
    .optional(),
  /** Of those that rest, the share that waits for a second winter. */
  secondYear: z.number().min(0).max(1).optional(),
  /** Source of that share, where it is another one. */
  secondYearSource: z.string().optional(),
});

/** Where and how its immatures are met: what a person may know of animals nobody can name. */
const met = z.strictObject({
  sat: z.array(z.enum(SAT)).default([]),
  /** Plants, animals or material it lives on, as genus, family or plain word; none: anything. */
  hosts: z.array(text).default([]),
  methods: z.array(method).default([]),
  /** Length of the body full-grown, before it turns into the pupa or the adult. */
  lengthMm: z
    .tuple([z.number().positive(), z.number().positive()])
    .refine(([from, to]) => from <= to, {error: 'the length runs from the smaller to the larger'})
    .optional(),
  source: z.string(),
});

/** What is done for it otherwise than for others of its kind; a start value that the room's own rules come before. */
const care = z
  .strictObject({
    task: text,
    stages: z.array(stage).optional(),
    everyDays: z.number().positive(),
    earliestDays: z.number().positive(),
    latestDays: z.number().positive(),
    harm: z.enum(['high', 'medium', 'low']).default('medium'),
    caution: text.optional(),
    source: z.string(),
    amount: amount.optional(),
    amountSource: z.string().optional(),
  })
  .refine(({earliestDays, everyDays, latestDays}) => earliestDays <= everyDays && everyDays <= latestDays, {
    path: ['everyDays'],
    error: 'the interval is not between the earliest and the latest',
  });

/** What a unit has to give it, and what it does to others there. */
const housing = z.strictObject({
  /** Room that one animal needs. */
  litresEach: z.number().positive().optional(),
  /** It eats other animals of its unit. */
  predatory: z.boolean().optional(),
  /** Its water needs air all day. */
  aerated: z.boolean().optional(),
  source: z.string(),
});

const waterMeasure = z.enum([
  'oxygenMgL',
  'ph',
  'unionisedMgL',
  'nitriteMgL',
  'conductivityUScm',
  'hardnessMgL',
]);

const waterLimit = z.strictObject({
  low: z.number().nonnegative().optional(),
  high: z.number().nonnegative().optional(),
  source: z.string().optional(),
});

const rank = z.enum(['species', 'genus', 'family', 'order', 'guild']);

const shared = {
  record: z.literal('profile').default('profile'),
  ...common,
  profile: code,
  name: text,
  classification: z.record(z.string(), z.string()).default({}),
  rearing: z.array(z.enum(['cage', 'aquarium', 'emergence-box'])).default([]),
  paceSd: z.number().min(0).max(1).default(0.1),
  paceSource: z.string().optional(),
  survival: z.number().min(0).max(1).optional(),
  survivalSource: z.string().optional(),
  /** The mean dose that each sex needs against the one stated: males are first where theirs is below 1. */
  sexes: z
    .strictObject({female: z.number().positive(), male: z.number().positive(), source: z.string()})
    .optional(),
  adult: z
    .strictObject({
      /** From emergence until it may be taken out, killed or handled. */
      hardenHours: z.number().nonnegative().optional(),
      /** The longest it may wait unseen. */
      holdHours: z.number().positive().optional(),
      source: z.string().optional(),
    })
    .default({}),
  limits: z
    .strictObject({
      temperature: z
        .strictObject({
          lethalLow: temperatureC.optional(),
          low: temperatureC.optional(),
          high: temperatureC.optional(),
          lethalHigh: temperatureC.optional(),
          source: z.string().optional(),
          lethalSource: z.string().optional(),
        })
        .superRefine(({lethalLow, low, high, lethalHigh}, context) => {
          const given = Object.entries({lethalLow, low, high, lethalHigh}).filter(
            (entry): entry is [string, number] => entry[1] !== undefined,
          );
          const wrong = given.findIndex(([, limit], i) => i > 0 && !(limit > given[i - 1]![1]));
          if (wrong > 0)
            context.addIssue({
              code: 'custom',
              path: [given[wrong]![0]],
              message: `${given[wrong]![0]} must be above ${given[wrong - 1]![0]} (${given[wrong - 1]![1]} °C)`,
              input: given[wrong]![1],
            });
        })
        .optional(),
      humidity: z
        .strictObject({low: rhPercent, high: rhPercent, source: z.string().optional()})
        .refine(({low, high}) => low < high, {error: 'the low humidity is not below the high one'})
        .optional(),
      /** Of water, by what is measured; `unionisedMgL` is the part of ammonia that harms. */
      water: z.partialRecord(waterMeasure, waterLimit).optional(),
      source: z.string().optional(),
    })
    .default({}),
  housing: housing.optional(),
  diapause: z.array(diapause).default([]),
  met: met.optional(),
  food: z.strictObject({what: text, source: z.string()}).optional(),
  care: z.array(care).optional(),
  cautions: z.array(text).default([]),
  note: text.optional(),
  sources: z.array(source),
  at: instant.optional(),
};

/** A taxon whose stages have rates of their own. Ranks are not tied to a form: a family may be given so too. */
export const taxonProfile = z
  .strictObject({
    ...shared,
    rank: z.enum(['species', 'genus']),
    stages: z.array(stageModel).min(1),
    published: z.array(published).optional(),
  })
  .refine(({stages}) => new Set(stages.map(({stage}) => stage)).size === stages.length, {
    path: ['stages'],
    error: 'a stage is given twice',
  })
  .superRefine(({stages, published = []}, context) => {
    const names = stages.map(({stage}) => stage);
    const fault = chainFault(names);
    if (fault !== undefined)
      context.addIssue({code: 'custom', path: ['stages'], message: fault, input: names});
    for (const [i, {from, to}] of published.entries())
      for (const [end, stage] of Object.entries({from, to}))
        if (!names.includes(stage))
          context.addIssue({
            code: 'custom',
            path: ['published', i, end],
            message: `the profile has no stage ${stage}`,
            input: stage,
          });
  })
  .refine(profile => everySourceIsListed(profile), {
    path: ['sources'],
    error: 'a figure names a source that is not listed',
  });

/** A group of unlike members: an order, a family, a guild. */
export const groupProfile = z
  .strictObject({
    ...shared,
    rank,
    stages: z.array(stageShare).min(1),
    variation,
  })
  .refine(({stages}) => Math.abs(stages.reduce((sum, {share}) => sum + share, 0) - 1) < 1e-6, {
    path: ['stages'],
    error: 'the shares of the stages do not sum to one',
  })
  .refine(profile => everySourceIsListed(profile), {
    path: ['sources'],
    error: 'a figure names a source that is not listed',
  });

/** A group of which nothing honest can be said in days: its moults are counted. */
export const undatedProfile = z
  .strictObject({
    ...shared,
    rank,
    stages: z
      .array(
        z.strictObject({
          stage: z.enum(['egg', 'larva', 'nymph', 'prepupa', 'pupa']),
          instars: instars.optional(),
          instarsSource: z.string().optional(),
        }),
      )
      .min(1),
    /** Why no date: said wherever the profile is used. */
    undated: z.strictObject({why: text, source: z.string()}),
  })
  .refine(profile => everySourceIsListed(profile), {
    path: ['sources'],
    error: 'a figure names a source that is not listed',
  });

interface Sourced {
  readonly sources: readonly {readonly id: string}[];
}

function everySourceIsListed(profile: Sourced): boolean {
  const listed = new Set(profile.sources.map(({id}) => id));
  return namedSources(profile).every(id => listed.has(id));
}

/** What stands under every `source` and `…Source`, however deep. */
function namedSources(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) =>
    typeof inner === 'string' && /^source$|Source$/.test(key) ? [inner] : namedSources(inner),
  );
}
