// What a room's daybook adds up to at an instant. Made by fold.ts, read by everything else, changed by nobody.
import type {Entry, Instant} from './entry.ts';
import type {Profile, RecordOf} from './schema/index.ts';
import type {Stage, StageCounts} from './stage.ts';

/** Values by time: each holds from its instant to the next one's. The first holds from the beginning. */
export type History<Value> = readonly {readonly from: Instant; readonly value: Value}[];

/** What says that a record is one, when, and how it came to be; the rest is what it tells. */
export type Header = 'record' | 'key' | 'recordedAt' | 'sure' | 'replaces' | 'at';
type Facts<Kind extends 'logger' | 'unit' | 'sample' | 'rule' | 'calendar' | 'person' | 'setting'> = Omit<
  RecordOf<Kind>,
  Header
>;
type With<Known, Field extends keyof Known> = Known & {readonly [F in Field]-?: NonNullable<Known[F]>};
export type Logger = With<Facts<'logger'>, 'kind' | 'maxGapHours'>;
export type Unit = With<Facts<'unit'>, 'type' | 'place'>;
export type Rule = Facts<'rule'>;
export type Calendar = Facts<'calendar'>;
export type Person = Facts<'person'>;
export type Settings = Facts<'setting'>;

/** A field sample, or a part of one that is sorted by itself and has the facts of the whole. */
export interface Sample extends Readonly<Facts<'sample'>> {
  readonly at: Instant;
  /** The sample that it is a part of; undefined for a field sample as it was brought in. */
  readonly of?: string | undefined;
  readonly part?: string | undefined;
  readonly share?: number | undefined;
  readonly bycatch: readonly Bycatch[];
  /** How far it is sorted, as last said. */
  readonly sorting?: Pick<RecordOf<'sorting'>, 'state' | 'note'> & {readonly at: Instant};
  /** What was taken out of it dead, by code. */
  readonly specimens: readonly string[];
}

export type Bycatch = Omit<RecordOf<'bycatch'>, Header | 'sample'> & {
  readonly at: Instant;
  readonly entry: string;
};

/** Animals that joined a lot together: its founders, a hatch, animals found, what another lot brought. */
export interface Cohort {
  readonly at: Instant;
  readonly stages: StageCounts;
  readonly progress: readonly [number, number];
  readonly ages: 'mixed' | 'one-brood';
  readonly how: 'started' | 'hatched' | 'found' | 'split' | 'merged';
  /** The lot they came from by split or merge, whose earlier history is theirs too. */
  readonly fromLot?: string | undefined;
  /** What was seen of them in that lot is told of them here: in neither lot are animals hidden. */
  readonly inherits?: boolean | undefined;
  /** The entry with which they joined. */
  readonly entry: string;
}

/** Something seen of a lot's animals, in order of time. Intervals run from the last look to this one. */
export type Sighting =
  | {
      readonly kind: 'count';
      readonly at: Instant;
      readonly stages: StageCounts;
      readonly complete: boolean;
      readonly entry: string;
    }
  | {readonly kind: 'check'; readonly at: Instant; readonly entry: string}
  | {
      readonly kind: 'emergence';
      readonly since: Instant;
      readonly at: Instant;
      readonly count: number;
      readonly entry: string;
    }
  | {
      readonly kind: 'removal';
      readonly at: Instant;
      readonly stage?: Stage | undefined;
      readonly count: number;
      /** More than were known to be in that stage: so many were seen to have come that far. */
      readonly judged?: boolean | undefined;
      readonly entry: string;
    };

/** The sum that must add up: what came in = what is alive + what went out. */
export interface Tally {
  readonly started: number;
  readonly hatched: number;
  readonly mergedIn: number;
  readonly found: number;
  readonly emerged: number;
  readonly parasitised: number;
  readonly lost: number;
  readonly preserved: number;
  readonly splitOff: number;
  readonly mergedOut: number;
}

export interface Lot {
  readonly code: string;
  /** The field sample all its animals go back to. */
  readonly sample: string;
  /** Where the lot itself came from. */
  readonly origin:
    | {readonly kind: 'sample'; readonly code: string}
    | {readonly kind: 'lot'; readonly code: string; readonly how: 'split' | 'eggs'}
    | {readonly kind: 'specimen'; readonly code: string};
  readonly taxon?: string | undefined;
  readonly startedAt: Instant;
  readonly counted: 'exact' | 'estimated' | 'unknown';
  /** How far off an estimated start may be, either way. */
  readonly within?: number | undefined;
  readonly material?: RecordOf<'lot'>['material'] | undefined;
  readonly candidates: readonly {readonly profile: string; readonly weight: number}[];
  /** What was said of the unit they need; all else is as their profiles say. */
  readonly needs?: RecordOf<'lot'>['needs'];
  readonly cohorts: readonly Cohort[];
  /** Where it lived, oldest first; the last stay is open while the lot is. */
  readonly stays: readonly {readonly unit: string; readonly from: Instant; readonly to?: Instant}[];
  readonly sightings: readonly Sighting[];
  /** Animals alive by the stage they were last seen in. Of hidden animals only those seen. */
  readonly alive: StageCounts;
  readonly tally: Tally;
  /** False where numbers are estimates or animals are hidden: the sum is then a lower bound. */
  readonly exact: boolean;
  /** Every time somebody looked for adults (a check, a complete count, an emergence). */
  readonly looks: readonly Instant[];
  /** The last of them. */
  readonly lastLook?: Instant | undefined;
  readonly specimens: readonly string[];
  readonly closed?: {readonly at: Instant; readonly reason?: string | undefined} | undefined;
  readonly mergedInto?: string | undefined;
  readonly entries: readonly Entry[];
}

export interface Specimen {
  readonly code: string;
  readonly kind: 'adult' | 'parasitoid' | 'voucher';
  /** The lot it came out of; undefined where it was taken out of its field sample dead. */
  readonly lot?: string | undefined;
  /** The sample, or part of one, that it goes back to. */
  readonly sample: string;
  readonly animal?: string | undefined;
  /** Animals under this code: more than one where a vial holds them together. */
  readonly individuals: number;
  readonly at: Instant;
  readonly since?: Instant | undefined;
  /** Of a voucher its own stage, `adult` too; of a parasitoid that of its host. */
  readonly stage?: Stage | undefined;
  readonly sex?: 'female' | 'male' | 'unknown' | undefined;
  readonly fate?: string | undefined;
  readonly condition?: string | undefined;
  readonly subimagoAt?: Instant | undefined;
  readonly imagoAt?: Instant | undefined;
  /** What is kept with it: cast skin, puparium. */
  readonly exuviae?: RecordOf<'emergence'>['exuviae'];
  /** The skin that a mayfly casts as a subimago. */
  readonly subimagoSkin?: RecordOf<'imago'>['exuviae'];
  /** Cocoon or remains of its host. */
  readonly remains?: RecordOf<'parasitoid'>['remains'];
  /** Its own cocoon, or that of its brood. */
  readonly cocoon?: RecordOf<'parasitoid'>['cocoon'];
  /** It came out of a parasitoid of the host, and of which. */
  readonly hyper?: boolean | undefined;
  readonly outOf?: string | undefined;
  /** Its present name: the last identification, else what was said when it was recorded. */
  readonly taxon?: string | undefined;
  readonly identifications: readonly Entry[];
  /** What was done to keep it, oldest first. */
  readonly preparations: readonly Entry[];
  /** Labels printed for it, oldest first. */
  readonly printed: readonly PrintedLabel[];
  readonly entry: string;
}

/** A label as it was printed: its text line by line, before lines were broken to fit. */
export interface PrintedLabel {
  readonly kind: RecordOf<'print'>['labels'][number]['kind'];
  readonly text: readonly string[];
  readonly at: Instant;
}

/** One thing done or skipped for a unit or lot. */
export interface CareDone {
  readonly entry: string;
  readonly task: string;
  readonly unit?: string | undefined;
  readonly lot?: string | undefined;
  readonly at: Instant;
  readonly by: string;
  readonly seen: Readonly<Record<string, boolean | number | string>>;
  /** Given when it could not be done. */
  readonly skipped?: string | undefined;
}

export interface Mask {
  readonly logger: string;
  readonly from: Instant;
  readonly to: Instant;
  readonly why: string;
  readonly lift: boolean;
}

export interface HandReading {
  readonly logger: string;
  readonly at: Instant;
  readonly temperature?: number | undefined;
  readonly humidity?: number | undefined;
  readonly entry: string;
}

export interface Extremes {
  readonly logger: string;
  readonly from: Instant;
  readonly to: Instant;
  readonly minimum: number;
  readonly maximum: number;
  readonly now?: number | undefined;
  readonly reset?: boolean | undefined;
  readonly entry: string;
}

export interface WaterReading {
  readonly unit: string;
  readonly at: Instant;
  readonly temperature?: number | undefined;
  readonly entry: string;
  readonly values: Readonly<Record<string, number>>;
}

/** Everything the given entries say, as of one instant; entries dated later are left out, voided ones too. */
export interface RoomState {
  readonly asOf: Instant;
  readonly loggers: ReadonlyMap<string, History<Logger>>;
  readonly units: ReadonlyMap<string, History<Unit>>;
  readonly samples: ReadonlyMap<string, Sample>;
  readonly lots: ReadonlyMap<string, Lot>;
  readonly specimens: ReadonlyMap<string, Specimen>;
  readonly rules: ReadonlyMap<string, Rule>;
  readonly profiles: ReadonlyMap<string, Profile>;
  readonly calendar?: Calendar;
  readonly people: ReadonlyMap<string, Person>;
  readonly settings: Settings;
  readonly care: readonly CareDone[];
  readonly acknowledged: ReadonlyMap<string, {readonly at: Instant; readonly done: string}>;
  readonly masks: readonly Mask[];
  readonly handReadings: readonly HandReading[];
  readonly extremes: readonly Extremes[];
  readonly water: readonly WaterReading[];
  /** Every entry that counts, in order of time, then of writing. */
  readonly entries: readonly Entry[];
  readonly voided: ReadonlySet<string>;
  /** Every entry as given, in the order of writing: also voided ones, the voids, and what is dated later. */
  readonly history: readonly Entry[];
}

/** The value that holds at an instant. */
export function valueAt<Value>(history: History<Value>, at: Instant): Value {
  let held = history[0]!.value;
  for (const {from, value} of history) if (from <= at) held = value;
  return held;
}

/** Lots that go on. One that was merged into another is closed by that. */
export function openLots({lots}: Pick<RoomState, 'lots'>): Lot[] {
  return [...lots.values()].filter(({closed}) => closed === undefined);
}
