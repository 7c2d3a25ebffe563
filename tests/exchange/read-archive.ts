// A Darwin Core archive as somebody else's programs read it: JSZip, fast-xml-parser and csv-parse.
import {parse} from 'csv-parse/sync';
import {XMLParser} from 'fast-xml-parser';
import JSZip from 'jszip';

export interface ReadTable {
  readonly element: 'core' | 'extension';
  readonly rowType: string;
  readonly file: string;
  /** Child elements in their order. */
  readonly children: readonly string[];
  readonly idIndex: number;
  readonly fields: readonly {readonly index: number; readonly term: string}[];
  readonly heading: readonly string[];
  readonly rows: readonly Readonly<Record<string, string>>[];
}

export interface ReadArchive {
  readonly files: readonly string[];
  readonly meta: {
    readonly namespace: string;
    readonly metadata: string;
    readonly children: readonly string[];
  };
  readonly tables: readonly ReadTable[];
  readonly eml: Readonly<Record<string, unknown>>;
}

interface Element {
  readonly [name: string]: unknown;
  readonly ':@'?: Readonly<Record<string, string>>;
}

export async function readArchive(bytes: Uint8Array): Promise<ReadArchive> {
  const zip = await JSZip.loadAsync(bytes);
  const text = async (file: string) => (await zip.file(file)!.async('string')) ?? '';
  const ordered = new XMLParser({ignoreAttributes: false, attributeNamePrefix: '', preserveOrder: true});
  const root = (ordered.parse(await text('meta.xml')) as Element[]).find(element => 'archive' in element)!;
  const children = root.archive as Element[];
  const tables: ReadTable[] = [];
  for (const child of children) tables.push(await tableOf(child, text));
  return {
    files: Object.keys(zip.files),
    meta: {
      namespace: root[':@']!.xmlns!,
      metadata: root[':@']!.metadata!,
      children: children.map(nameOf),
    },
    tables,
    eml: new XMLParser({ignoreAttributes: false}).parse(await text('eml.xml')),
  };
}

async function tableOf(element: Element, text: (file: string) => Promise<string>): Promise<ReadTable> {
  const name = nameOf(element) as 'core' | 'extension';
  const form = element[':@']!;
  const parts = element[name] as Element[];
  const location = ((parts[0]!.files as Element[])[0]!.location as Element[])[0]!['#text'];
  const fields = parts
    .filter(part => 'field' in part)
    .map(part => ({index: Number(part[':@']!.index), term: part[':@']!.term!}));
  const lines: string[][] = parse(await text(String(location)), {
    delimiter: form.fieldsTerminatedBy!,
    quote: form.fieldsEnclosedBy!,
    record_delimiter: form.linesTerminatedBy!.replace('\\r', '\r').replace('\\n', '\n'),
  });
  const [heading = [], ...rows] = lines;
  const short = fields.map(({term}) => term.slice(term.lastIndexOf('/') + 1));
  return {
    element: name,
    rowType: form.rowType!,
    file: String(location),
    children: parts.map(nameOf),
    idIndex: Number(parts.find(part => 'id' in part || 'coreid' in part)![':@']!.index),
    fields,
    heading,
    rows: rows.map(row => Object.fromEntries(short.map((term, i) => [term, row[i]!]))),
  };
}

function nameOf(element: Element): string {
  return Object.keys(element).find(key => key !== ':@')!;
}
