// Labels for specimens: which are wanted, printed to a file, and remembered so that none is printed twice unasked.

import {pinForm, vialForm} from '../exchange/labels/form.ts';
import {isForPin, type Label, type LabelKind} from '../exchange/labels/label.ts';
import type {Piece, Section} from '../exchange/labels/label-pdf.ts';
import {labelsOf} from '../exchange/labels/specimen-labels.ts';
import {writeOutput} from '../exchange/output-file.ts';
import type {Specimen} from '../records/state.ts';
import {type Desk, openDesk} from './desk.ts';
import {assertKnown} from './known-codes.ts';
import {record} from './record.ts';
import type {Session} from './session.ts';
import {type SheetWishes, sheetFile, sizedForm} from './sheet-file.ts';

/** Whose labels. Nothing named: of every specimen in the room. */
export interface LabelWishes extends SheetWishes {
  readonly lots?: readonly string[];
  readonly samples?: readonly string[];
  readonly specimens?: readonly string[];
  /** Only these kinds. */
  readonly kinds?: readonly LabelKind[] | undefined;
  /** For vials in place of pins. */
  readonly vials?: boolean;
  /** Also those that were printed before. */
  readonly again?: boolean;
}

export interface LabelBatch {
  readonly labels: readonly Label[];
  /** Labels that were printed before, with the same text. */
  readonly passedOver: number;
  /** Labels of which another text was printed before. */
  readonly changed: number;
}

/** As `teneral labels` answers. */
export interface LabelsAnswer {
  readonly file: string | null;
  readonly specimens: number;
  readonly labels: number;
  readonly kinds: Readonly<Partial<Record<LabelKind, number>>>;
  readonly passedOver: number;
  readonly changed: number;
  /** Sheets of paper; null for text. */
  readonly pages: number | null;
  /** Ids of the entries that remember what was printed. */
  readonly entries: readonly string[];
}

/** @throws Refusal for a code that the room does not hold */
export function labelsWanted({state, civil}: Desk, wishes: LabelWishes): LabelBatch {
  const {kinds, vials = false, again = false} = wishes;
  const all = specimensWanted({state}, wishes)
    .flatMap(specimen => labelsOf(specimen, state, civil, vials))
    .filter(({kind}) => kinds === undefined || kinds.includes(kind));
  const before = ({kind, specimen}: Label) =>
    state.specimens.get(specimen)?.printed.findLast(printed => printed.kind === kind)?.text;
  const isSame = (label: Label) => before(label)?.join('\n') === label.lines.join('\n');
  const labels = again ? all : all.filter(label => !isSame(label));
  return {
    labels,
    passedOver: all.length - labels.length,
    changed: labels.filter(label => before(label) !== undefined && !isSame(label)).length,
  };
}

/**
 * Print labels to a file, by its ending a PDF or plain text, and remember them.
 * @throws Refusal where a code is unknown, a label does not fit, or the file cannot be written; nothing is done then
 */
export async function printLabels(
  session: Session,
  wishes: LabelWishes,
  file: string,
): Promise<LabelsAnswer> {
  const desk = await openDesk(session, 'all');
  const batch = labelsWanted(desk, wishes);
  if (batch.labels.length === 0) return answerOf(batch, {file: null, pages: null, entries: []});
  const {content, pages} = await sheetFile(file, sectionsOf(batch.labels, wishes), wishes, desk);
  const {applied} = await writeOutput([{path: file, content}], () =>
    record(session, printRecords(batch.labels, desk)),
  );
  return answerOf(batch, {file, pages, entries: applied.entries});
}

/** Remember labels that were printed elsewhere. */
export async function rememberLabels(session: Session, wishes: LabelWishes): Promise<void> {
  const desk = await openDesk(session, 'all');
  await record(session, printRecords(labelsWanted(desk, wishes).labels, desk));
}

/** As they would be printed, remembering nothing. */
export function answerOf(
  {labels, passedOver, changed}: LabelBatch,
  done: Pick<LabelsAnswer, 'file' | 'pages' | 'entries'>,
): LabelsAnswer {
  const kinds: Partial<Record<LabelKind, number>> = {};
  for (const {kind} of labels) kinds[kind] = (kinds[kind] ?? 0) + 1;
  const specimens = bySpecimen(labels).size;
  return {specimens, labels: labels.length, kinds, passedOver, changed, ...done};
}

/** The labels of one specimen stand below one another; those for vials have sheets of their own. */
export function stripsOf(labels: readonly Label[], square = false): Piece[][] {
  return [...bySpecimen(labels).values()].map(strip => strip.map(label => pieceOf(label, square)));
}

function sectionsOf(labels: readonly Label[], wishes: LabelWishes): Section[] {
  const pin = {
    form: wishes.vials === true ? pinForm : sizedForm(pinForm, wishes),
    labels: labels.filter(isForPin),
  };
  const vial = {
    form: wishes.vials === true ? sizedForm(vialForm, wishes) : vialForm,
    labels: labels.filter(label => !isForPin(label)),
  };
  return [pin, vial]
    .filter(section => section.labels.length > 0)
    .map(section => ({form: section.form, strips: stripsOf(section.labels, wishes.square)}));
}

function bySpecimen(labels: readonly Label[]): Map<string, Label[]> {
  const strips = new Map<string, Label[]>();
  for (const label of labels) {
    const strip = strips.get(label.specimen);
    if (strip === undefined) strips.set(label.specimen, [label]);
    else strip.push(label);
  }
  return strips;
}

/** Names of taxa stand in italics; a square code stands where the code stands. */
function pieceOf({kind, specimen, lines}: Label, square: boolean): Piece {
  const italic = kind === 'determination';
  return {
    what: `the ${kind} label of ${specimen}`,
    lines: lines.map((text, i) => (italic && i === 0 ? {text, weight: 'italic'} : {text})),
    square: square && SQUARED.has(kind) ? lines[0] : undefined,
  };
}

/** Labels that begin with a code. */
const SQUARED: ReadonlySet<LabelKind> = new Set(['code', 'vial', 'exuviae']);

/** By field sample and lot. What was let go has no label. */
function specimensWanted(
  {state}: Pick<Desk, 'state'>,
  {lots = [], samples = [], specimens = []}: LabelWishes,
): Specimen[] {
  assertKnown(lots, state.lots, 'lot');
  assertKnown(samples, state.samples, 'field sample');
  assertKnown(specimens, state.specimens, 'specimen');
  const all = lots.length + samples.length + specimens.length === 0;
  const isWanted = ({code, lot = '', sample}: Specimen) =>
    all || specimens.includes(code) || lots.includes(lot) || samples.includes(sample);
  return [...state.specimens.values()]
    .filter(specimen => specimen.fate !== 'released' && isWanted(specimen))
    .sort((a, b) => inWords.compare(a.sample, b.sample) || inWords.compare(a.lot ?? '', b.lot ?? ''));
}

const inWords = new Intl.Collator('en', {numeric: true});

/** One record a lot or sample, each text once. */
function printRecords(labels: readonly Label[], {state}: Desk): unknown[] {
  const owners = new Map<string, Map<string, {kind: LabelKind; text: readonly string[]; for: string[]}>>();
  for (const {kind, lines, specimen} of labels) {
    const {lot, sample} = state.specimens.get(specimen)!;
    const owner = JSON.stringify(lot === undefined ? {sample} : {lot});
    const texts = owners.get(owner) ?? new Map();
    owners.set(owner, texts);
    const key = JSON.stringify([kind, lines]);
    const same = texts.get(key) ?? {kind, text: lines, for: []};
    texts.set(key, same);
    same.for.push(specimen);
  }
  return [...owners].map(([owner, texts]) => ({
    record: 'print',
    ...JSON.parse(owner),
    labels: [...texts.values()],
  }));
}
