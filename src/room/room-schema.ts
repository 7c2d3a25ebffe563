// The form of room.json, for one that another program has touched. Loaded only then: zod takes its time.
import * as z from 'zod';
import {Refusal} from '../records/refusal.ts';
import {code, text} from '../records/schema/fields.ts';
import {parseRecord, type RoomRecord} from '../records/schema/index.ts';
import {DOCUMENT_PATH} from './document-path.ts';
import type {RoomDocument} from './room-document.ts';

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
    context.addIssue({code: 'custom', message: `${error.where} ${error.what}`.trim()});
    return z.NEVER;
  }
});

export const entry = z.strictObject({
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
