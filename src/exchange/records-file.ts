// Records as text: a JSON array, or one JSON object a line.
import {Refusal} from '../records/refusal.ts';

export interface PlacedRecord {
  readonly value: unknown;
  /** How to name it to a person: "line 3" or "record 3". */
  readonly where: string;
}

/**
 * @param file how to name the text to a person
 * @throws Refusal where it is neither form, naming the first bad line
 */
export function readRecords(text: string, file: string): PlacedRecord[] {
  const body = text.replace(/^\uFEFF/, '').trim();
  if (body === '') return [];
  return body.startsWith('[') ? fromArray(body, file) : fromLines(text, file);
}

function fromArray(body: string, file: string): PlacedRecord[] {
  const list = parsed(body, file);
  if (!Array.isArray(list)) throw notJson(file, 'the text is no JSON array');
  return list.map((value, i) => ({value, where: `${file}, record ${i + 1}`}));
}

function fromLines(text: string, file: string): PlacedRecord[] {
  return text.split(/\r?\n/).flatMap((line, i) => {
    if (line.trim() === '') return [];
    const where = `${file}, line ${i + 1}`;
    return [{value: parsed(line.replace(/^\uFEFF/, ''), where), where}];
  });
}

function parsed(text: string, where: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw notJson(where, `the text is not JSON (${error instanceof Error ? error.message : String(error)})`);
  }
}

function notJson(where: string, what: string): Refusal {
  return new Refusal(
    what.replaceAll('\n', ' '),
    where,
    'Give a JSON array of records, or one record in braces a line.',
  );
}
