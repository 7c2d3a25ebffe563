// The sheets, what they are given to draw with, and what a key can bring about.

import type {RuleUse} from '../care/rule-use.ts';
import type {Clues} from '../development/choosing.ts';
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import type {Line} from '../exchange/pictures/line.ts';
import type {TreeNode} from '../exchange/pictures/tree.ts';
import type {Day} from '../records/civil.ts';
import type {Refusal} from '../records/refusal.ts';
import type {RecordOf} from '../records/schema/index.ts';
import type {RateModelKind} from '../thermal/rate-model.ts';
import type {Choice} from '../work/choice.ts';
import type {Desk} from '../work/desk.ts';
import type {Finder} from '../work/find.ts';
import type {FitSource, Fitting, FittingKept} from '../work/fitting.ts';
import type {LibraryEntry} from '../work/library.ts';
import type {DoubtRow} from '../work/logger-readings.ts';
import type {Outlook} from '../work/outlook.ts';
import type {Question} from '../work/said-answer.ts';
import type {SaidLines} from '../work/said-lines.ts';
import type {Today} from '../work/today.ts';
import type {UnitCourse} from '../work/unit-course.ts';
import type {Asking, Purpose} from './ask/asking.ts';
import type {Binding, Named} from './bindings.ts';
import type {Values} from './form/field.ts';
import type {FormName, Subject} from './form/forms.ts';
import type {LabelSubject} from './out/out-keys.ts';
import type {Stroke} from './strokes.ts';

export type PlanTopic = 'week' | 'month' | 'wait' | 'handover';
/** What words are worked out about: a page, or what a rule would have asked for. */
export type TextTopic = PlanTopic | {readonly rule: string};

export type CourseSpan = 'day' | 'week' | 'month' | 'season' | 'year';

export type Sheet =
  | {readonly kind: 'round'; readonly cursor: string | undefined; readonly ticked: readonly string[]}
  | {
      readonly kind: 'threads';
      readonly cursor: string | undefined;
      /** Columns by which the picture is moved into the future. */
      readonly shift: number;
      readonly daysPerColumn: number;
    }
  | {readonly kind: 'lot'; readonly code: string; readonly scroll: number}
  | {
      readonly kind: 'unit';
      readonly code: string;
      readonly span: CourseSpan;
      /** Spans by which the picture is moved into the future. */
      readonly shift: number;
      readonly scroll: number;
      /** Its climate in figures, in place of the picture. */
      readonly figures?: boolean;
    }
  /** What a logger said that is hardly true. */
  | {readonly kind: 'doubts'; readonly logger: string; readonly cursor: number}
  | {readonly kind: 'sample'; readonly code: string; readonly scroll: number}
  | {readonly kind: 'specimen'; readonly code: string; readonly scroll: number}
  /** What may be written down about a thing. */
  | {readonly kind: 'acts'; readonly of: Subject; readonly code: string; readonly cursor: number}
  | {readonly kind: 'open-ends'; readonly cursor: number}
  | {readonly kind: 'profiles'; readonly cursor: number}
  | {
      readonly kind: 'profile';
      readonly code: string;
      /** Whose curve is drawn: 0 all stages after each other, else the stage of this number. */
      readonly stage: number;
      readonly scroll: number;
    }
  | FitSheet
  | {readonly kind: 'plan'; readonly topic: PlanTopic; readonly scroll: number}
  | {
      readonly kind: 'rules';
      readonly cursor: string | undefined;
      /** The rule whose trial is shown. */
      readonly tried: string | undefined;
    }
  | FormSheet
  | EmergenceSheet
  | CandidatesSheet
  /** An answer in words to what was asked of a lot or of the room. */
  | {readonly kind: 'answer'; readonly of: Question; readonly scroll: number}
  | {readonly kind: 'find'; readonly text: string; readonly cursor: number}
  | {readonly kind: 'keys'; readonly of: SheetKind; readonly scroll: number};

/** Days at temperatures on their way into a profile. */
export interface FitSheet {
  readonly kind: 'fit';
  readonly of: FitSource;
  /** A row being typed. */
  readonly typing: string;
  /** 0: what is best; else the model of this number. */
  readonly cursor: number;
  /** Its kind; undefined where the best is to be kept. */
  readonly model?: RateModelKind | undefined;
  readonly profile?: string | undefined;
  readonly name?: string | undefined;
  readonly stage?: string | undefined;
  readonly source?: string | undefined;
  /** A figure was doubted, and saving again confirms it. */
  readonly doubted?: boolean | undefined;
}

/** A form being filled in. */
export interface FormSheet {
  readonly kind: 'form';
  readonly form: FormName;
  /** The code it is about; empty where it is about nothing that is there yet. */
  readonly about: string;
  readonly values: Values;
  /** The field under the cursor. */
  readonly cursor: number;
  /** It was doubted, and enter confirms it. */
  readonly doubted: boolean;
}

export type Fate = 'kept' | 'killed' | 'released' | 'dead';

/** What came out of one host. */
export interface ParasitoidsOut {
  readonly count: number;
  readonly taxon: string | undefined;
  /** All in one vial, under one code. */
  readonly together?: true | undefined;
  /** Of all of them, where it was looked at. */
  readonly sex?: 'female' | 'male' | 'unknown' | undefined;
  /** The codes of what is kept of the host. */
  readonly remains?: string | undefined;
  readonly cocoon?: string | undefined;
}

/** The form in which adults that came out are written down. */
export interface EmergenceSheet {
  readonly kind: 'emergence';
  readonly lot: string;
  /** A number being typed before the key of a sex. */
  readonly number: string;
  readonly adults: readonly {
    readonly sex: 'female' | 'male' | 'unknown';
    readonly count: number;
    /** Where they differ from the others. */
    readonly fate?: Fate;
    readonly condition?: string;
  }[];
  readonly fate: Fate;
  readonly subimago: boolean;
  readonly condition: string | undefined;
  readonly exuviae: RecordOf<'emergence'>['exuviae'];
  /** The number of the one animal it is, where that was followed by itself. */
  readonly animal: string | undefined;
  /** What they are called. */
  readonly taxon: string | undefined;
  /** A code of their own, the first of several. */
  readonly code: string | undefined;
  /** When they were found, as it was typed; undefined: now. */
  readonly at: string | undefined;
  readonly parasitoids: ParasitoidsOut | undefined;
  /** They fed on what was dead among the animals, and are none of them. */
  readonly scavengers: boolean;
  /** It was doubted, and enter confirms it. */
  readonly doubted: boolean;
  /** The codes that were given when it was saved. */
  readonly saved: readonly string[] | undefined;
}

/** What a lot may be, while it is being chosen. */
export interface CandidatesSheet {
  readonly kind: 'candidates';
  readonly lot: string;
  readonly cursor: number;
  /** Clues told here, as they were typed. */
  readonly told: string;
  /** The candidates as changed here; undefined while nothing is. */
  readonly draft: readonly {readonly profile: string; readonly weight: number}[] | undefined;
  /** Profiles named by hand. */
  readonly added: readonly string[];
  /** What was wrong with what was typed last. */
  readonly fault: string | undefined;
}

export type SheetKind = Sheet['kind'];
export type SheetOf<Kind extends SheetKind> = Extract<Sheet, {readonly kind: Kind}>;

/** What is known of the room, read at one instant. */
export interface Facts {
  readonly desk: Desk;
  readonly today: Today;
}

/** The forecast of a lot, with the days for whose noon it holds the shares of the stages. */
export type LotOutlook =
  | {readonly days: readonly Day[]; readonly outlook: Outlook}
  | {readonly failed: Refusal};

/** Forecasts as they come; those of a moment ago stay until they are replaced. */
export interface Outlooks {
  /** The question that is fully answered; undefined while it is not, or when the room has changed since. */
  readonly of: string | undefined;
  readonly byLot: ReadonlyMap<string, LotOutlook>;
  /** Why there are none. */
  readonly failed: Refusal | undefined;
}

/** Something that takes time and whose answer a sheet shows; `failed` where it was refused. */
export type Loaded<Value> = {readonly value: Value} | {readonly failed: Refusal};

/** Everything ever recorded, and how to search it. */
export interface Whole {
  readonly revision: Desk['room']['revision'];
  readonly desk: Desk;
  readonly finder: Finder;
}

/** Everything a sheet may look at while it draws or decides. */
export interface View {
  readonly columns: number;
  readonly rows: number;
  readonly glyphs: Glyphs;
  /** Lines of words only, for reading aloud. */
  readonly plain: boolean;
  readonly facts: Facts;
  readonly outlooks: Outlooks;
  readonly courses: ReadonlyMap<string, Loaded<UnitCourse>>;
  /** By logger. */
  readonly doubts: ReadonlyMap<string, Loaded<readonly DoubtRow[]>>;
  readonly trees: ReadonlyMap<string, Loaded<TreeNode>>;
  /** Every profile at hand; undefined until somebody looks at one. */
  readonly library: Loaded<readonly LibraryEntry[]> | undefined;
  readonly fits: ReadonlyMap<string, Loaded<Fitting>>;
  readonly texts: ReadonlyMap<string, Loaded<readonly Line[]>>;
  /** The care rules; undefined until they are looked up. */
  readonly rules: Loaded<readonly RuleUse[]> | undefined;
  /** The room with everything archived, as of one revision; undefined until somebody searches in it. */
  readonly whole: Whole | undefined;
  /** What lots may be, under lot and clues. */
  readonly choices: ReadonlyMap<string, Loaded<readonly Choice[]>>;
  readonly answers: ReadonlyMap<string, Loaded<SaidLines>>;
  readonly asking: Asking | undefined;
  /** Tasks and alerts that changed a moment ago, with what happened. */
  readonly lately: ReadonlyMap<string, string>;
  /** The keys of every kind of sheet. */
  readonly tables: Tables;
}

export type Tables = {
  readonly [Kind in SheetKind]: {readonly title: string; readonly keys: readonly Named[]};
};

/** Work that the screens ask for; done by perform.ts. */
export type Effect =
  | {readonly do: 'finish'; readonly groups: readonly FinishGroup[]}
  | {readonly do: 'skip'; readonly ids: readonly string[]; readonly why: string}
  | {readonly do: 'undo'}
  | {
      readonly do: 'record';
      readonly records: readonly unknown[];
      /** What is said once it is written. */
      readonly said: string;
      /** Lines that say for a moment that they changed. */
      readonly about: readonly string[];
      /** Specimen codes that are given. */
      readonly saves?: readonly string[];
      /** The form on top goes away once it is written. */
      readonly closes?: true;
    }
  | {
      readonly do: 'correct';
      readonly entry: string;
      readonly changes: readonly string[];
      readonly reason: string | undefined;
      readonly sure?: boolean;
      readonly said: string;
    }
  | {readonly do: 'labels'; readonly of: LabelSubject; readonly code: string; readonly file: string}
  | {readonly do: 'export'; readonly to: string}
  | {readonly do: 'whole'}
  | {readonly do: 'library'}
  | {readonly do: 'fit'; readonly key: string; readonly of: FitSource}
  | {readonly do: 'keep-fit'; readonly of: FitSource; readonly kept: FittingKept}
  | {
      readonly do: 'outlooks';
      readonly of: string;
      readonly days: readonly Day[];
      readonly first: string | undefined;
    }
  | {
      readonly do: 'course';
      readonly key: string;
      readonly unit: string;
      readonly fromDays: number;
      readonly toDays: number;
    }
  | {readonly do: 'choices'; readonly key: string; readonly clues: Clues}
  | {readonly do: 'doubts'; readonly logger: string}
  | {readonly do: 'import'; readonly logger: string; readonly path: string}
  | {readonly do: 'answer'; readonly key: string; readonly question: Question}
  | {readonly do: 'tree'; readonly key: string; readonly code: string; readonly way: 'up' | 'down'}
  | {
      readonly do: 'text';
      readonly key: string;
      readonly topic: TextTopic;
      readonly columns: number;
    }
  | {readonly do: 'rules'}
  | {readonly do: 'quit'};

/** Tasks of one kind with the answers that they share. */
export interface FinishGroup {
  readonly ids: readonly string[];
  readonly seen: Readonly<Record<string, boolean | number | string>>;
}

/** What a key brought about. */
export interface Step<Own extends Sheet = Sheet> {
  /** The sheet as it is now. */
  readonly sheet?: Own;
  /** Another sheet laid over it. */
  readonly open?: Sheet;
  /** Away with the sheet on top. */
  readonly back?: true;
  /** Another home sheet. */
  readonly home?: Sheet;
  readonly ask?: Asking;
  readonly effects?: readonly Effect[];
  readonly say?: string;
  /** As if this key had been pressed on the sheet below. */
  readonly press?: Stroke;
}

/** One kind of sheet: its keys, its drawing, what it needs to be loaded. */
export interface SheetPart<Own extends Sheet> {
  readonly title: string;
  readonly keys: readonly Binding<Own, View, Step<Own>>[];
  /** Characters are text here, whatever they do elsewhere. */
  readonly typedInto?: true;
  /** Takes every stroke before the keys do, where it is typed into. */
  type?(sheet: Own, stroke: Stroke, view: View): Step<Own> | undefined;
  /** A text for a field of its own came. */
  filled?(sheet: Own, field: Extract<Purpose, {for: 'field'}>['field'], text: string): Own;
  /** One of the choices that it put was made. */
  chosen?(sheet: Own, key: string, view: View): Step<Own>;
  /** What it asked answers for is being done. */
  finished?(sheet: Own, view: View): Own;
  /** What must be loaded to draw it, and is not yet. */
  needs?(sheet: Own, view: View): readonly Effect[];
  /** Head, body and detail; the frame around it is drawn by page.ts. */
  draw(sheet: Own, view: View, room: Room): Page;
}

/** Space for the two parts of a page. */
export interface Room {
  readonly columns: number;
  readonly body: number;
  readonly detail: number;
}

export interface Page {
  readonly head: string;
  /** At the right end of the head. */
  readonly aside: string;
  /** At most as many as the room has; fewer are filled with blanks. */
  readonly body: readonly Line[];
  /** Absent where the body runs on through the room of both parts. */
  readonly detail?: readonly Line[];
}
