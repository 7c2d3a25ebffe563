// The care list on paper: boxes to tick and lines to fill, shelf by shelf, to pin on the door.

export interface DoorRow {
  readonly unit: string;
  readonly what: string;
  /** "before 09:10", "by Mon 15 June". */
  readonly until: string;
  /** What is to be written down, as labels before a line. */
  readonly ask: readonly string[];
  /** The number of its caution at the foot. */
  readonly caution: number | undefined;
}

export interface DoorShelf {
  readonly place: string;
  /** Who takes it; undefined where nobody is down for it. */
  readonly who: string | undefined;
  readonly rows: readonly DoorRow[];
}

export interface DoorDay {
  readonly heading: string;
  /** "14 to do, about 37 min". */
  readonly aside: string;
  /** What is amiss, and what else must be known. */
  readonly remarks: readonly string[];
  readonly shelves: readonly DoorShelf[];
}

export interface DoorSheet {
  readonly title: string;
  readonly days: readonly DoorDay[];
  /** Numbered from 1. */
  readonly cautions: readonly string[];
}

/** At the foot of every sheet. */
export const DEFERS =
  'Local rules, safety data sheets and people licensed for the work come before what stands here.';
