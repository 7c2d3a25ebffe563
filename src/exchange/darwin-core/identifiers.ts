// Identifiers that are the same in every archive of a room and in no other room's: names in a name space of the
// room's own, as UUIDs of version 5 (RFC 9562, 5.5), written as URNs (RFC 9562, 4).
import {v5 as uuid} from 'uuid';
import type {Entry} from '../../records/entry.ts';

/** What can be named, with what tells it from others of its kind. */
export type Named =
  | {readonly kind: 'dataset'}
  | {readonly kind: 'sample' | 'lot' | 'specimen' | 'host' | 'entry' | 'bycatch'; readonly code: string}
  | {readonly kind: 'founders'; readonly code: string; readonly stage: string}
  | {readonly kind: 'animal'; readonly code: string; readonly animal: string}
  | {readonly kind: 'relation'; readonly from: string; readonly to: string; readonly how: string}
  | {readonly kind: 'measurement'; readonly of: string; readonly what: string};

export type IdentifierOf = (named: Named) => string;

/** A name space for rearing rooms: drawn once at random. */
const ROOMS = 'c5f1b3f0-5a57-4a0e-9d0b-6f6f0f5f9a41';

/**
 * @param first the first entry ever written in the room; entries are never taken away, so it stays the first
 * @returns gives everything in the room its identifier
 */
export function identifiersIn(
  {name, zone}: {readonly name: string; readonly zone: string},
  first: Entry | undefined,
): IdentifierOf {
  const room = uuid(JSON.stringify([name, zone, first?.recordedAt, first?.by, first?.record]), ROOMS);
  return named => `urn:uuid:${uuid(JSON.stringify(named), room)}`;
}
