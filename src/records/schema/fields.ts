// The kinds of field that records share: codes, instants, days, stages, counts.
import * as z from 'zod';

/** A code whose lack is told in these words. */
export const codeElse = (missing: string | undefined) =>
  z.string(missing).regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/, {
    error: 'a code has 1 to 40 letters, digits, ".", "_" or "-", and starts with a letter or digit',
  });

/** A code of a sample, lot, unit, logger or specimen. No meaning is read from it. */
export const code = codeElse(undefined);

/** A civil day, yyyy-mm-dd. */
export const day = z.iso.date({error: 'a day is written yyyy-mm-dd, such as 2026-05-30'});

/**
 * An instant, ISO 8601. Without an offset it is read in the room's zone, a bare day as its beginning; once
 * accepted it always carries its offset.
 */
export const instant = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}([T ]\d{2}:\d{2}(:\d{2}(\.\d+)?)?(Z|[+-]\d{2}:?\d{2})?)?$/, {
    error: 'an instant is written like 2026-05-30T09:00 or 2026-05-30T09:00:00+02:00',
  });

/** A time of day, hh:mm. */
export const clockTime = z
  .string()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, {error: 'a time of day is written hh:mm, such as 06:30'});

export const text = z.string().trim().min(1, {error: 'this text is empty'}).max(2000);

/** Numbers of animals are whole. */
export const wholeNumber = z.int().nonnegative();
export const positiveWhole = z.int().positive();

/**
 * A stage before the adult: `egg`, `larva-N` or `nymph-N` (`larva`, `nymph` where instars are not told apart),
 * `prepupa`, `pupa`.
 */
export const stage = z.string().regex(/^(egg|(larva|nymph)(-[1-9]\d?)?|prepupa|pupa)$/, {
  error: 'a stage is egg, larva or larva-1 …, nymph or nymph-1 …, prepupa or pupa',
});

/** How many animals in each stage. */
export const stageCounts = z.record(stage, wholeNumber).refine(counts => Object.keys(counts).length > 0, {
  error: 'no stage is given',
});

/** What may stand beside every record. */
export const common = {
  /** Its own key: it is applied once. */
  key: z.string().min(1).max(200).optional(),
  /** When it was really written down. */
  recordedAt: instant.optional(),
  /** It is unusual, and a person has looked again and confirmed it. */
  sure: z.boolean().optional(),
  /** The id of the void entry that it is the correction of. */
  replaces: z.string().min(1).max(40).optional(),
};

/** Records about animals may name one animal that is followed by itself. */
export const animal = {animal: z.string().min(1).max(20).optional()};

export const temperatureC = z.number().min(-60).max(80);
export const rhPercent = z.number().min(0).max(100);
