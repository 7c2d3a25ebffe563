// Where the documents beside room.json lie, and what their names say.

/** Every path that a document may have. Nothing else is ever read or removed. */
export const DOCUMENT_PATH =
  /^(?:archive\/\d{4}|daybook\/\d{4}-\d{2}|readings\/[A-Za-z0-9][A-Za-z0-9._-]{0,39}\/\d{4}-\d{2}|index)-[1-9]\d*\.json$/;

export type DocumentKind = 'archive' | 'daybook' | 'readings' | 'index';

export function kindOf(path: string): DocumentKind {
  const [first] = path.split(/[/-]/);
  return first as DocumentKind;
}

/** The start of the path of a logger's documents. */
export function readingsOf(logger: string): string {
  return `readings/${logger}/`;
}

/** A document's path without its number and ending: what its successors share. */
export function stemOf(path: string): string {
  return path.slice(0, path.lastIndexOf('-'));
}

/** The number at the end of a document's path; 0 where the path is none. */
export function numberOf(path: string): number {
  return Number(/-(\d+)\.json$/.exec(path)?.[1] ?? 0);
}

/** The UTC month, yyyy-mm, of a document of readings or of the daybook. */
export function monthOf(path: string): string {
  return stemOf(path).slice(-'yyyy-mm'.length);
}
