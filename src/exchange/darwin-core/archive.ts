// A Darwin Core archive: tables, meta.xml and eml.xml in one zip file.
import {strToU8, zipSync} from 'fflate';
import type {Instant} from '../../records/entry.ts';
import {csvText} from '../csv.ts';
import {type DatasetFacts, emlXml} from './eml.ts';
import {eventRows} from './events.ts';
import type {ArchiveFacts} from './facts.ts';
import {measurementRows} from './measurements.ts';
import {metaXml} from './meta-xml.ts';
import {occurrenceRows} from './occurrences.ts';
import {relationshipRows} from './relationships.ts';
import {
  eventTerms,
  headingOf,
  measurementTerms,
  occurrenceTerms,
  relationshipTerms,
  type Table,
} from './terms.ts';

export interface Archive {
  readonly bytes: Uint8Array;
  /** Rows of every table, by its file. */
  readonly rows: Readonly<Record<string, number>>;
}

/** @param now written into the zip as when its files were made */
export function darwinCoreArchive(facts: ArchiveFacts, dataset: DatasetFacts, now: Instant): Archive {
  const [core, ...extensions] = tablesOf(facts);
  const tables = [core, ...extensions];
  const texts = {
    'meta.xml': metaXml(core, extensions),
    'eml.xml': emlXml(dataset),
    ...Object.fromEntries(tables.map(table => [table.file, tableText(table)])),
  };
  const files = Object.fromEntries(Object.entries(texts).map(([file, text]) => [file, strToU8(text)]));
  return {
    bytes: zipSync(files, {mtime: now}),
    rows: Object.fromEntries(tables.map(({file, rows}) => [file, rows.length])),
  };
}

/** The core first. */
function tablesOf(facts: ArchiveFacts): [core: Table, ...extensions: Table[]] {
  return [
    {file: 'event.csv', rowType: 'dwc:Event', terms: eventTerms, rows: eventRows(facts)},
    {file: 'occurrence.csv', rowType: 'dwc:Occurrence', terms: occurrenceTerms, rows: occurrenceRows(facts)},
    {
      file: 'resourcerelationship.csv',
      rowType: 'dwc:ResourceRelationship',
      terms: relationshipTerms,
      rows: relationshipRows(facts),
    },
    {
      file: 'measurementorfact.csv',
      rowType: 'dwc:MeasurementOrFact',
      terms: measurementTerms,
      rows: measurementRows(facts),
    },
  ];
}

/** Some readers end a row at every line break, quoted or not, so there is none inside a field. */
function tableText({terms, rows}: Table): string {
  const cells = rows.map(row => terms.map(term => (row[term] ?? '').replace(/\s*[\r\n]+\s*/g, ' ')));
  return csvText(terms.map(headingOf), cells);
}
