// The Darwin Core archive held against the standard: the list of terms of 2026-05-26 (darwin-core-terms.json names its
// source), the Darwin Core text guide of 2023-09-13 and Simple Darwin Core (github:tdwg/dwc, docs/text and docs/simple,
// at the commit named there).
import {readFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {asked, temporaryFolder, teneral} from '../commands/program.ts';
import {type ReadArchive, type ReadTable, readArchive} from '../exchange/read-archive.ts';
import standard from './darwin-core-terms.json' with {type: 'json'};

const NOW = '2026-06-12T08:10';

/** What the example season has none of. */
const more = [
  {record: 'subsample', code: '26-022-q', of: '26-022', part: 'outer leaves', at: '2026-06-11T09:00'},
  {
    record: 'bycatch',
    sample: '26-027',
    what: 'Rana sp.',
    kind: 'amphibian',
    alive: true,
    done: 'released, "at once"',
  },
  {
    record: 'voucher',
    sample: '26-027',
    stage: 'adult',
    specimen: 'dead-1',
    taxon: 'Culex cf. pipiens',
    at: '2026-06-03T10:00',
  },
  {record: 'note', about: '26-022-A-1', text: 'two lines\nof text', weightMg: 61.5},
  {
    record: 'lot',
    code: 'ovo',
    from: {specimen: '26-022-A-2'},
    unit: 'C1',
    stages: {egg: 12},
    at: '2026-06-12T08:00',
  },
  {
    record: 'parasitoid',
    lot: '26-022-A',
    taxon: 'Mesochorus sp.',
    count: 1,
    hosts: 0,
    hyper: true,
    outOf: '26-022-A-p1',
    codes: ['hyper-1'],
  },
  {
    record: 'identification',
    specimen: '26-022-A-1',
    taxon: 'Pieris rapae',
    qualifier: 'cf.',
    by: 'B. Namer',
    on: '2026-06-10',
  },
  {
    record: 'identification',
    specimen: '26-022-A-1',
    taxon: 'Pieris napi',
    rank: 'species',
    by: 'C. Namer',
    on: '2026-06-11',
  },
  {record: 'preparation', specimen: '26-022-A-1', method: 'pinned', store: 'drawer 3'},
];

let dir: string;
let archive: ReadArchive;
let bytes: Uint8Array;
const at = (...args: string[]) => teneral(['--room', dir, '--now', NOW, ...args]);

async function exported(name: string): Promise<Uint8Array> {
  const file = join(temporaryFolder(), name);
  const {status, err} = at('export', 'darwin-core', '--out', file, '--licence', 'CC-BY');
  expect(err).toBe('');
  expect(status).toBe(0);
  return readFileSync(file);
}

const tableOf = (rowType: string): ReadTable =>
  archive.tables.find(table => table.rowType.endsWith(`/${rowType}`))!;
const events = () => tableOf('Event').rows;
const occurrences = () => tableOf('Occurrence').rows;
const relations = () => tableOf('ResourceRelationship').rows;
const measurements = () => tableOf('MeasurementOrFact').rows;

beforeAll(async () => {
  dir = join(temporaryFolder(), 'room');
  expect(teneral(['demo', dir, '--no-open', '--now', NOW]).status).toBe(0);
  const applied = teneral(['--room', dir, '--now', NOW, 'apply', '-'], JSON.stringify(more));
  expect(applied.err).toBe('');
  bytes = await exported('room.zip');
  archive = await readArchive(bytes);
}, 120_000);

describe('meta.xml, by the text guide', () => {
  it('describes one core and extensions that point at it, each file once, columns counted from 0', () => {
    expect(archive.meta.namespace).toBe('http://rs.tdwg.org/dwc/text/');
    expect(archive.files).toContain(archive.meta.metadata);
    expect(archive.meta.children).toEqual(['core', 'extension', 'extension', 'extension']);
    for (const {element, children, fields, file, heading, idIndex} of archive.tables) {
      expect(archive.files).toContain(file);
      expect(children.slice(0, 2)).toEqual(['files', element === 'core' ? 'id' : 'coreid']);
      expect(new Set(children.slice(2))).toEqual(new Set(['field']));
      expect(fields.map(({index}) => index)).toEqual(heading.map((_, i) => i));
      expect(fields.map(({term}) => term.slice(term.lastIndexOf('/') + 1))).toEqual(heading);
      expect(heading[idIndex]).toBe('eventID');
    }
    expect(archive.files).toHaveLength(2 + archive.tables.length);
  });

  it('names only terms and classes of the standard’s own list, none twice in a table', () => {
    const properties = new Set(standard.properties);
    const classes = new Set(standard.classes);
    for (const {rowType, fields} of archive.tables) {
      expect(classes).toContain(rowType);
      for (const {term} of fields) expect(properties).toContain(term);
      expect(new Set(fields.map(({term}) => term)).size).toBe(fields.length);
    }
  });
});

describe('the values, by the standard', () => {
  it('keep to its closed lists', () => {
    const {basisOfRecord, occurrenceStatus, degreeOfEstablishment, eventCategory} = standard.vocabularies;
    for (const row of occurrences()) {
      expect(basisOfRecord).toContain(row.basisOfRecord);
      expect(occurrenceStatus).toContain(row.occurrenceStatus);
      expect([...degreeOfEstablishment, '']).toContain(row.degreeOfEstablishment);
      expect(['female', 'male', '']).toContain(row.sex);
    }
    for (const row of events()) expect(eventCategory).toContain(row.eventCategory);
  });

  it('give coordinates in range with a datum, no uncertainty of 0, sizes with their unit, dates as ISO 8601', () => {
    const iso = /^\d{4}-\d{2}-\d{2}(T\d{2}:\d{2}:\d{2}(\.\d+)?([+-]\d{2}:\d{2}|Z))?$/;
    for (const row of events()) {
      expect(row.decimalLatitude === '').toBe(row.geodeticDatum === '');
      expect(Math.abs(Number(row.decimalLatitude))).toBeLessThanOrEqual(90);
      expect(Math.abs(Number(row.decimalLongitude))).toBeLessThanOrEqual(180);
      expect(row.coordinateUncertaintyInMeters).not.toBe('0');
      expect(row.sampleSizeValue === '').toBe(row.sampleSizeUnit === '');
      const [from, to = from] = row.eventDate!.split('/');
      expect(from).toMatch(iso);
      expect(to).toMatch(iso);
      expect(Date.parse(to!)).toBeGreaterThanOrEqual(Date.parse(from!));
    }
  });

  it('name what is certain in scientificName and the doubt beside it', () => {
    const [dead] = occurrences().filter(({catalogNumber}) => catalogNumber === 'dead-1');
    expect(dead).toMatchObject({
      scientificName: 'Culex',
      identificationQualifier: 'cf. pipiens',
      verbatimIdentification: 'Culex cf. pipiens',
    });
    const [pinned] = occurrences().filter(({catalogNumber}) => catalogNumber === '26-022-A-1');
    expect(pinned).toMatchObject({
      scientificName: 'Pieris napi',
      identifiedBy: 'C. Namer',
      dateIdentified: '2026-06-11',
      previousIdentifications: 'Pieris cf. rapae (det. B. Namer, 2026-06-10)',
      basisOfRecord: 'PreservedSpecimen',
      preparations: 'pinned',
      license: 'https://creativecommons.org/licenses/by/4.0/legalcode',
    });
    for (const row of occurrences()) expect(row.scientificName).not.toMatch(/\b(sp|cf|aff)\.|\?/);
  });
});

describe('identifiers', () => {
  it('are URNs of UUIDs, none given twice', () => {
    const all = [
      ...events().map(row => row.eventID!),
      ...occurrences().map(row => row.occurrenceID!),
      ...relations().map(row => row.resourceRelationshipID!),
      ...measurements().map(row => row.measurementID!),
    ];
    for (const id of all)
      expect(id).toMatch(/^urn:uuid:[0-9a-f]{8}-[0-9a-f]{4}-5[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
    expect(new Set(all).size).toBe(all.length);
  });

  it('resolve inside the archive, wherever one is named', () => {
    const eventIds = new Set(events().map(({eventID}) => eventID));
    const resources = new Set([...eventIds, ...occurrences().map(({occurrenceID}) => occurrenceID)]);
    for (const {rows} of archive.tables) for (const {eventID} of rows) expect(eventIds).toContain(eventID);
    for (const {parentEventID} of events())
      if (parentEventID !== '') expect(eventIds).toContain(parentEventID);
    for (const {resourceID, relatedResourceID} of relations()) {
      expect(resources).toContain(resourceID);
      expect(resources).toContain(relatedResourceID);
    }
    for (const {associatedOccurrences} of occurrences())
      for (const [, id] of associatedOccurrences!.matchAll(/":"([^"]+)"/g)) expect(resources).toContain(id);
  });

  it('stay the same in a later archive, whatever was recorded since', async () => {
    const before = archive;
    expect(Buffer.from(await exported('again.zip')).equals(Buffer.from(bytes))).toBe(true);
    at('emerge', '26-022-A', '--female', '1');
    const later = await readArchive(await exported('later.zip'));
    for (const [i, {rows}] of before.tables.entries()) {
      const ids = new Set(later.tables[i]!.rows.map(row => row.occurrenceID ?? row.eventID));
      for (const row of rows) expect(ids).toContain(row.occurrenceID ?? row.eventID);
    }
    expect(teneral(['--room', dir, '--now', NOW, 'undo']).status).toBe(0);
  });
});

describe('the room, read back from its archive', () => {
  interface Balance {
    readonly lot: string;
    readonly started: number;
    readonly emerged: number;
    readonly preserved: number;
    readonly alive: Readonly<Record<string, number>>;
    readonly splitOff: number;
    readonly lost: number;
  }

  it('has the counts of every lot', () => {
    const balances = asked<Balance[]>(['--room', dir, '--now', NOW, 'balance']);
    expect(balances.length).toBeGreaterThan(10);
    for (const {lot, started, emerged, preserved, alive, lost, splitOff} of balances) {
      const [rearing] = events().filter(row => row.eventType === 'rearing' && row.fieldNumber === lot);
      const figure = (type: string) =>
        Number(
          measurements().find(
            row => row.eventID === rearing!.eventID && row.measurementType === `animals ${type}`,
          )!.measurementValue,
        );
      const living = Object.values(alive).reduce((sum, count) => sum + count, 0);
      expect([figure('started'), figure('emerged'), figure('alive')]).toEqual([started, emerged, living]);
      expect([figure('lost'), figure('split off')]).toEqual([lost, splitOff]);
      const ofLot = occurrences().filter(({recordNumber}) => recordNumber === lot);
      const foundAt = (type: string) =>
        new Set(
          events()
            .filter(row => row.eventType === type && row.fieldNumber === lot)
            .map(row => row.eventID),
        );
      const hasParasitoid = new Set(
        relations()
          .filter(row => /parasitoid of/.test(row.relationshipOfResource!))
          .map(row => row.resourceID),
      );
      const emergences = foundAt('emergence');
      const adults = ofLot.filter(
        row => emergences.has(row.eventID!) && !hasParasitoid.has(row.occurrenceID!),
      );
      expect(adults.length, lot).toBe(emerged);
      const preservations = foundAt('preservation');
      expect(ofLot.filter(row => preservations.has(row.eventID!)).length).toBe(preserved);
      const founders = ofLot.filter(row => row.catalogNumber === '' && row.individualCount !== '');
      const isSplit = founders.length === 0;
      if (!isSplit)
        expect(
          founders.reduce((sum, row) => sum + Number(row.individualCount), 0),
          lot,
        ).toBe(started);
    }
  });

  it('leads from every specimen to its field sample, as a trace does', () => {
    const sampleEvents = new Map(
      events()
        .filter(row => row.eventCategory === 'MaterialGathering')
        .map(row => [row.eventID, row.fieldNumber]),
    );
    const specimens = asked<{code: string; sample: string}[]>([
      '--room',
      dir,
      '--now',
      NOW,
      'list',
      'specimens',
    ]);
    const rowOf = new Map(occurrences().map(row => [row.catalogNumber, row]));
    for (const {code, sample} of specimens) {
      const row = rowOf.get(code)!;
      const reached = relations()
        .filter(({resourceID}) => resourceID === row.occurrenceID)
        .map(({relatedResourceID}) => sampleEvents.get(relatedResourceID!))
        .filter(found => found !== undefined);
      const own = sampleEvents.get(row.eventID!);
      expect(own === undefined ? reached : [own], code).toEqual([sample]);
    }
  });

  it('ties parasitoids to their hosts, hyperparasitoids to both, eggs to their mother, animals to their plant', () => {
    const idOf = (code: string) =>
      occurrences().find(({catalogNumber}) => catalogNumber === code)!.occurrenceID;
    const relationsOf = (id: string | undefined) =>
      relations()
        .filter(({resourceID}) => resourceID === id)
        .map(row => row.relationshipOfResource);
    expect(relationsOf(idOf('26-022-A-p1'))).toEqual(['parasitoid of', 'reared from field sample']);
    expect(relationsOf(idOf('hyper-1'))).toEqual([
      'parasitoid of',
      'hyperparasitoid of',
      'reared from field sample',
    ]);
    const eggs = occurrences().find(row => row.recordNumber === 'ovo' && row.lifeStage === 'egg')!;
    expect(relations().find(row => row.resourceID === eggs.occurrenceID)).toMatchObject({
      relationshipOfResource: 'laid by',
      relatedResourceID: idOf('26-022-A-2'),
    });
    const larvae = occurrences().find(row => row.recordNumber === '26-022-A' && row.lifeStage === 'larva')!;
    const host = relations().find(row => row.resourceID === larvae.occurrenceID)!;
    expect(host.relationshipOfResourceID).toBe('http://purl.obolibrary.org/obo/RO_0002454');
    expect(occurrences().find(row => row.occurrenceID === host.relatedResourceID)!.scientificName).toBe(
      'Brassica oleracea',
    );
  });

  it('keeps notes of weight, and no line break inside a field', () => {
    expect(measurements().find(row => row.measurementRemarks === 'of 26-022-A-1')).toMatchObject({
      measurementValue: '61.5',
      measurementType: 'body mass',
      measurementUnit: 'mg',
    });
    for (const {rows} of archive.tables)
      for (const row of rows) for (const value of Object.values(row)) expect(value).not.toMatch(/[\r\n]/);
  });

  it('says in its metadata what it is, who answers for it, where and when', () => {
    const {dataset} = archive.eml['eml:eml'] as {dataset: Record<string, unknown>};
    expect(Object.keys(dataset)).toEqual([
      'alternateIdentifier',
      'title',
      'creator',
      'metadataProvider',
      'pubDate',
      'language',
      'abstract',
      'intellectualRights',
      'coverage',
      'contact',
      'methods',
    ]);
    expect(dataset).toMatchObject({
      pubDate: NOW.slice(0, 10),
      creator: {individualName: {surName: 'A. Keeper'}},
    });
  });
});
