// The archive of any room: every identifier resolves, no record is doubled, every specimen leads to its field sample.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {eventRows} from '../../src/exchange/darwin-core/events.ts';
import type {ArchiveFacts} from '../../src/exchange/darwin-core/facts.ts';
import {identifiersIn} from '../../src/exchange/darwin-core/identifiers.ts';
import {measurementRows} from '../../src/exchange/darwin-core/measurements.ts';
import {occurrenceRows} from '../../src/exchange/darwin-core/occurrences.ts';
import {relationshipRows} from '../../src/exchange/darwin-core/relationships.ts';
import {fold} from '../../src/records/fold.ts';
import {greenwich} from '../records/daybook-of.ts';
import {type Daybook, randomDaybook} from '../records/random-daybook.ts';

function factsOf(entries: Daybook): ArchiveFacts {
  const idOf = identifiersIn({name: 'any room', zone: 'UTC'}, entries[0]);
  return {state: fold(entries, Number.POSITIVE_INFINITY), civil: greenwich, idOf, warmth: new Map()};
}

const law = (holds: (facts: ArchiveFacts) => void) =>
  fc.assert(
    fc.property(randomDaybook, entries => {
      const facts = factsOf(entries);
      // What goes on has no end yet; an archive is of an instant.
      holds({...facts, state: {...facts.state, asOf: Date.parse('2031-12-01T00:00Z')}});
    }),
    {numRuns: 40},
  );

describe('the archive of a random daybook', () => {
  it('names no event and no occurrence that it does not hold, and gives no identifier twice', () => {
    law(facts => {
      const events = eventRows(facts).map(row => row['dwc:eventID']);
      const occurrences = occurrenceRows(facts);
      const relations = relationshipRows(facts);
      const measurements = measurementRows(facts);
      const known = new Set([...events, ...occurrences.map(row => row['dwc:occurrenceID'])]);
      for (const row of [...occurrences, ...relations, ...measurements])
        expect(events).toContain(row['dwc:eventID']);
      for (const row of eventRows(facts))
        if (row['dwc:parentEventID'] !== undefined) expect(events).toContain(row['dwc:parentEventID']);
      for (const row of relations) {
        expect(known).toContain(row['dwc:resourceID']);
        expect(known).toContain(row['dwc:relatedResourceID']);
      }
      const ids = [
        ...known,
        ...relations.map(row => row['dwc:resourceRelationshipID']),
        ...measurements.map(row => row['dwc:measurementID']),
      ];
      expect(known.size).toBe(events.length + occurrences.length);
      expect(new Set(ids).size).toBe(ids.length);
    });
  });

  it('leads from every specimen to exactly one field sample, its own, and counts what the room counts', () => {
    law(facts => {
      const {state, idOf} = facts;
      const samples = new Map([...state.samples.keys()].map(code => [idOf({kind: 'sample', code}), code]));
      const relations = relationshipRows(facts);
      for (const {code, sample} of state.specimens.values()) {
        const own = idOf({kind: 'specimen', code});
        const reached = relations
          .filter(row => row['dwc:resourceID'] === own)
          .flatMap(row => samples.get(row['dwc:relatedResourceID'] ?? '') ?? []);
        expect(reached).toEqual([sample]);
      }
      const specimens = occurrenceRows(facts).filter(row => row['dwc:catalogNumber'] !== undefined);
      expect(specimens.length).toBe(state.specimens.size);
      for (const {code, tally} of state.lots.values()) {
        const ofLot = [...state.specimens.values()].filter(({lot, kind}) => lot === code && kind === 'adult');
        expect(ofLot.length).toBe(tally.emerged);
      }
    });
  });
});
