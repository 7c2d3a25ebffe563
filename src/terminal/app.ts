// The state of the screens, and what can happen to it.
import type {RuleUse} from '../care/rule-use.ts';
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import type {Line} from '../exchange/pictures/line.ts';
import type {TreeNode} from '../exchange/pictures/tree.ts';
import type {Refusal} from '../records/refusal.ts';
import type {Choice} from '../work/choice.ts';
import type {Fitting} from '../work/fitting.ts';
import type {LibraryEntry} from '../work/library.ts';
import type {DoubtRow} from '../work/logger-readings.ts';
import type {SaidLines} from '../work/said-lines.ts';
import type {UnitCourse} from '../work/unit-course.ts';
import type {Asking} from './ask/asking.ts';
import {roundHome} from './homes.ts';
import type {Said} from './page.ts';
import {tables} from './parts.ts';
import type {Effect, Facts, Loaded, LotOutlook, Sheet, View, Whole} from './sheet.ts';
import type {Stroke} from './strokes.ts';

export interface App extends View {
  /** A home sheet, then what was laid over it; the last one shows. Never empty. */
  readonly sheets: readonly Sheet[];
  readonly said: Said | undefined;
  /** Goes up with everything that is said or done, so that a late reply can tell whether it is still wanted. */
  readonly serial: number;
  /** What is being loaded or written; asked for once only. */
  readonly busy: ReadonlySet<string>;
  readonly quit: boolean;
}

/** What happens; what was worked out tells of which room, and is dropped where that is another by now. */
export type Message = Happening & {readonly asOf?: Facts};

type Happening =
  | {readonly is: 'stroke'; readonly stroke: Stroke}
  | {readonly is: 'size'; readonly columns: number; readonly rows: number}
  /** The room was read anew, because somebody changed it or time went on. */
  | {readonly is: 'facts'; readonly facts: Facts}
  /** An act of this screen is on disk. */
  | {
      readonly is: 'written';
      readonly facts: Facts;
      readonly said: string;
      readonly lately: ReadonlyMap<string, string>;
      readonly saves?: readonly string[] | undefined;
      readonly closes?: boolean | undefined;
    }
  /** Everything archived is at hand too. */
  | {readonly is: 'whole'; readonly whole: Whole}
  | {readonly is: 'refused'; readonly refusal: Refusal}
  /** The forecast of one lot, or why there is none; of no lot: why there are none at all. */
  | {readonly is: 'outlook'; readonly code: string | undefined; readonly outlook: LotOutlook}
  /** No more forecasts come for this question. */
  | {readonly is: 'outlooks-told'; readonly of: string}
  | {readonly is: 'course'; readonly key: string; readonly course: Loaded<UnitCourse>}
  | {readonly is: 'choices'; readonly key: string; readonly choices: Loaded<readonly Choice[]>}
  | {readonly is: 'library'; readonly library: Loaded<readonly LibraryEntry[]>}
  | {readonly is: 'fit'; readonly key: string; readonly fit: Loaded<Fitting>}
  | {readonly is: 'doubts'; readonly logger: string; readonly doubts: Loaded<readonly DoubtRow[]>}
  | {readonly is: 'text'; readonly key: string; readonly text: Loaded<readonly Line[]>}
  | {readonly is: 'rules'; readonly rules: Loaded<readonly RuleUse[]>}
  | {readonly is: 'answer'; readonly key: string; readonly answer: Loaded<SaidLines>}
  | {readonly is: 'tree'; readonly key: string; readonly tree: Loaded<TreeNode>}
  /** What was said or had changed is no news any more. */
  | {readonly is: 'moment-over'; readonly serial: number};

export interface Next {
  readonly app: App;
  readonly effects: readonly Effect[];
}

export interface Terminal {
  readonly columns: number;
  readonly rows: number;
  readonly glyphs: Glyphs;
  readonly plain: boolean;
}

export function firstApp(facts: Facts, terminal: Terminal): App {
  return {
    ...terminal,
    facts,
    outlooks: {of: undefined, byLot: new Map(), failed: undefined},
    courses: new Map(),
    doubts: new Map(),
    trees: new Map(),
    library: undefined,
    fits: new Map(),
    texts: new Map(),
    rules: undefined,
    whole: undefined,
    choices: new Map(),
    answers: new Map(),
    asking: undefined,
    lately: new Map(),
    tables,
    sheets: [roundHome],
    said: undefined,
    serial: 0,
    busy: new Set(),
    quit: false,
  };
}

export function topOf({sheets}: Pick<App, 'sheets'>): Sheet {
  return sheets[sheets.length - 1]!;
}

/** The app with another sheet on top, or none. */
export function withTop(app: App, sheet: Sheet | undefined): App {
  const below = app.sheets.slice(0, -1);
  return {...app, sheets: sheet === undefined ? below : [...below, sheet]};
}

export function saying(
  app: App,
  text: string,
  kind: Said['kind'],
  asking: Asking | undefined = app.asking,
): App {
  return {...app, asking, said: {text, kind}, serial: app.serial + 1};
}

/** The name under which work is known while it is being done. */
export function nameOfEffect(effect: Effect): string {
  switch (effect.do) {
    case 'outlooks':
      return `outlooks ${effect.of}`;
    case 'rules':
      return 'rules';
    case 'course':
    case 'text':
    case 'tree':
    case 'choices':
    case 'fit':
    case 'answer':
      return `${effect.do} ${effect.key}`;
    case 'doubts':
      return `doubts ${effect.logger}`;
    case 'whole':
    case 'library':
      return effect.do;
    default:
      return 'act';
  }
}
