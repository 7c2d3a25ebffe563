// A room on disk, as the rest of the program sees it.
import type {Series} from '../climate/series.ts';
import type {Entry} from '../records/entry.ts';

/** One import of a logger file: where its rows came from. */
export interface ImportBatch {
  readonly id: string;
  readonly logger: string;
  readonly recordedAt: string;
  readonly by: string;
  readonly file: string;
  /** SHA-256 of the file as imported. */
  readonly hash: string;
}

/** What a room holds of one logger, known without reading a single reading. */
export interface LoggerSpan {
  readonly rows: number;
  readonly fromDays: number;
  readonly toDays: number;
}

/** The next number of each kind of id: entries `e1`, `e2` …, requests `r1` …, imports `i1` …. */
export interface Numbering {
  readonly entry: number;
  readonly request: number;
  readonly batch: number;
}

/** What somebody asks about: codes of samples, lots and specimens, keys of records, ids of entries. */
export interface Names {
  readonly codes?: Iterable<string>;
  readonly keys?: Iterable<string>;
  readonly entries?: Iterable<string>;
}

/** A room as it stood at one commit. Reading it later may show a newer one: open it again. */
export interface Room {
  readonly dir: string;
  readonly name: string;
  /** IANA zone in which days and times of day are meant. */
  readonly zone: string;
  /** Another one after every change. */
  readonly revision: string;
  /** Entries about everything open, in the order of writing. */
  readonly entries: readonly Entry[];
  readonly imports: readonly ImportBatch[];
  /** What a change numbers its entries with; see nextIds in numbering.ts. */
  readonly next: Numbering;
  /** What a person should hear when this room is opened, such as that room.json was edited by hand. */
  readonly warnings: readonly string[];
  /**
   * Entries about everything open, and about whatever the names belong to, archived or not, in the order of
   * writing. Costs the documents that hold those names, nothing where all is open.
   */
  entriesWith(names: Names): Promise<readonly Entry[]>;
  /** Every entry ever written, also about what is archived. Costs what is stored. */
  allEntries(): Promise<readonly Entry[]>;
  /**
   * Imported readings of a logger from one day to another, inclusive; time in days since 1970 UTC.
   * @param importedBy only what had been imported by this instant (ms since 1970)
   */
  series(logger: string, fromDays: number, toDays: number, importedBy?: number): Promise<Series>;
  span(logger: string): LoggerSpan | undefined;
}

/** New readings of one logger. Instants the room holds already must have been taken out. */
export interface NewReadings {
  readonly logger: string;
  readonly file: string;
  readonly hash: string;
  readonly series: Series;
  /** When it was imported, where that was earlier than the change. */
  readonly recordedAt?: string;
}

/** What a change adds. Nothing is ever altered or removed. */
export interface Change {
  readonly entries: readonly Entry[];
  readonly readings?: readonly NewReadings[];
}
