// The forms of a room's documents, for what another program has touched, and for verify. Loaded only then: zod takes
// its time.
import * as z from 'zod';
import {Refusal} from '../records/refusal.ts';
import {code, text} from '../records/schema/fields.ts';
import {parseRecord, type RoomRecord} from '../records/schema/index.ts';
import {DOCUMENT_PATH} from './document-path.ts';
import type {RoomDocument} from './room-document.ts';
import {FORMAT} from './sealed.ts';

const instant = z.iso.datetime({offset: true});
const sha256 = z.string().regex(/^[0-9a-f]{64}$/, {error: 'a SHA-256 has 64 hexadecimal digits'});
const wholeNumber = z.int().nonnegative();
const numbered = (letter: string) =>
  z.string().regex(new RegExp(`^${letter}[1-9]\\d*$`), {error: `it is written ${letter} and a number`});

/** A record is checked as it is when it is applied. */
const record = z.unknown().transform((value, context): RoomRecord => {
  try {
    return parseRecord(value, '');
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const {what, where, mend} = error;
    context.addIssue({code: 'custom', message: `${where.trim()}: ${what}. ${mend}`});
    return z.NEVER;
  }
});

const entry = z.strictObject({
  id: numbered('e'),
  request: numbered('r'),
  recordedAt: instant,
  by: text,
  record,
});

const importBatch = z.strictObject({
  id: numbered('i'),
  logger: code,
  recordedAt: instant,
  by: text,
  file: z.string(),
  hash: z.string(),
});

const documentRow = z.strictObject({
  path: z.string().regex(DOCUMENT_PATH, {error: 'no document of a room has this path'}),
  sha256,
  rows: wholeNumber,
  from: instant.optional(),
  to: instant.optional(),
});

export const roomDocument: z.ZodType<RoomDocument> = z.strictObject({
  name: text,
  zone: text,
  created: z.strictObject({at: instant, by: text}),
  next: z.strictObject({entry: z.int().positive(), request: z.int().positive(), batch: z.int().positive()}),
  entries: z.array(entry),
  imports: z.array(importBatch),
  documents: z.array(documentRow),
});

export const entriesDocument = z.strictObject({format: z.literal(FORMAT), entries: z.array(entry)});

const column = z.array(z.number().nullable()).nullable();

export const readingsDocument = z.strictObject({
  format: z.literal(FORMAT),
  logger: code,
  month: z.string().regex(/^\d{4}-(0[1-9]|1[0-2])$/, {error: 'a month is written yyyy-mm'}),
  batches: z.array(z.tuple([numbered('i'), z.int().positive()])),
  seconds: z.array(z.number()),
  temperatureC: column,
  rhPercent: column,
});

const named = z.tuple([z.string(), wholeNumber]);

export const indexDocument = z.strictObject({
  format: z.literal(FORMAT),
  documents: z.array(z.string()),
  codes: z.array(named),
  keys: z.array(named),
  entries: z.array(named),
});
