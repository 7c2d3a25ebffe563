// Labels and cards on sheets of paper, in true millimetres.
import type {Instant} from '../../records/entry.ts';
import {Refusal} from '../../records/refusal.ts';
import type {Paper} from '../pdf/paper.ts';
import {type At, openPrintJob, type PrintJob, type Rectangle} from '../pdf/print-job.ts';
import {type Fitted, fitted, type SetLine} from './fit.ts';
import type {Form} from './form.ts';
import {FOOT_MM, MARGIN_MM, placed} from './placing.ts';
import {squareCode} from './square-code.ts';

/** One label or card. */
export interface Piece {
  /** How to name it to a person: "the data label of 26-031-A-1". */
  readonly what: string;
  /** Stands large and bold above the lines. */
  readonly heading?: string | undefined;
  readonly lines: readonly SetLine[];
  /** What a square code beside the lines holds. */
  readonly square?: string | undefined;
}

/** Pieces of one form, on sheets of their own; those of a strip stand below one another, in order. */
export interface Section {
  readonly form: Form;
  readonly strips: readonly (readonly Piece[])[];
}

export interface PrintedSheets {
  readonly bytes: Uint8Array;
  readonly pages: number;
}

/**
 * @param title told by viewers of the file, and below every page
 * @throws Refusal where a text does not fit its piece, or holds a character that the face has no shape for
 */
export async function labelPdf(
  sections: readonly Section[],
  paper: Paper,
  {title, now}: {readonly title: string; readonly now: Instant},
): Promise<PrintedSheets> {
  const job = await openPrintJob(title, now);
  const pages = sections.flatMap(section => pagesOf(job, section, paper));
  for (const [page, pieces] of pages.entries()) {
    job.page(paper);
    for (const piece of pieces) drawPiece(job, piece);
    drawFoot(job, paper, `${title}, page ${page + 1} of ${pages.length}`);
  }
  return {bytes: await job.bytes(), pages: pages.length};
}

/** A piece with its place on the page, and its text as it was set. */
interface SetPiece {
  readonly piece: Piece;
  readonly outline: Rectangle;
  /** The left end of the text and its top. */
  readonly text: At;
  readonly set: Fitted;
}

/** Of all heights of the form the smallest that holds every text, so that all can be cut alike. */
function pagesOf(job: PrintJob, {form, strips}: Section, paper: Paper): SetPiece[][] {
  for (const piece of strips.flat()) assertPrintable(job, piece);
  const heights = [form.heightMm, ...form.tallerMm];
  const heightMm = heights.find(heightMm =>
    strips.every(strip => strip.every(piece => setIn(job, piece, {...form, heightMm}) !== undefined)),
  );
  if (heightMm === undefined) {
    const tallest = {...form, heightMm: heights.at(-1)!};
    throw tooMuch(strips.flat().find(piece => setIn(job, piece, tallest) === undefined)!, tallest);
  }
  const chosen = {...form, heightMm};
  const slots = placed(
    strips.map(strip => strip.length),
    chosen,
    paper,
  );
  if (slots === undefined) throw tooLargeForPaper(chosen, paper);
  const pages: SetPiece[][] = [];
  for (const [i, strip] of strips.entries())
    for (const [j, piece] of strip.entries()) {
      const {page, xMm, yMm} = slots[i]![j]!;
      const {leftMm, topMm} = textArea(piece, chosen);
      const text = {xMm: xMm + leftMm, yMm: yMm + topMm};
      const outline = {xMm, yMm, widthMm: form.widthMm, heightMm};
      pages[page] ??= [];
      pages[page].push({piece, outline, text, set: setIn(job, piece, chosen)!});
    }
  return pages;
}

const MM_PER_POINT = 25.4 / 72;
/** Of the height of the type: how far the base line lies below its top. */
const ASCENT = 0.8;
const HEADING_PT = 20;
const CUT_MM = 0.1;

/** Where a piece has room for text: beside its square code, below its heading. */
function textArea({heading, square}: Piece, {widthMm, heightMm, padMm}: Form) {
  const leftMm = square === undefined ? padMm : squareSide({widthMm, heightMm});
  const topMm = padMm + (heading === undefined ? 0 : HEADING_PT * MM_PER_POINT);
  return {leftMm, topMm, widthMm: widthMm - padMm - leftMm, heightMm: heightMm - padMm - topMm};
}

/** Large enough for any camera; more would only take room from the text. */
const LARGEST_SQUARE_MM = 20;

function squareSide({widthMm, heightMm}: {readonly widthMm: number; readonly heightMm: number}): number {
  return Math.min(heightMm, widthMm / 2, LARGEST_SQUARE_MM);
}

function setIn(job: PrintJob, piece: Piece, form: Form): Fitted | undefined {
  return fitted(piece.lines, textArea(piece, form), form.sizesPt, job.widthMm);
}

function drawPiece(job: PrintJob, {piece, outline, text, set}: SetPiece): void {
  const {heading, square} = piece;
  drawCut(job, outline);
  const sideMm = squareSide(outline);
  if (square !== undefined) job.areas(squareCode(square, {...outline, widthMm: sideMm, heightMm: sideMm}));
  if (heading !== undefined) {
    const above = (1 - ASCENT) * HEADING_PT * MM_PER_POINT;
    job.text(heading, {xMm: text.xMm, yMm: text.yMm - above}, HEADING_PT, 'bold');
  }
  for (const [i, line] of set.lines.entries()) {
    const base = (i + ASCENT) * set.sizePt * MM_PER_POINT;
    job.text(line.text, {xMm: text.xMm, yMm: text.yMm + base}, set.sizePt, line.weight);
  }
}

/** Where to cut. */
function drawCut(job: PrintJob, {xMm, yMm, widthMm, heightMm}: Rectangle): void {
  const [right, bottom] = [xMm + widthMm, yMm + heightMm];
  job.line({xMm, yMm}, {xMm: right, yMm}, CUT_MM);
  job.line({xMm, yMm: bottom}, {xMm: right, yMm: bottom}, CUT_MM);
  job.line({xMm, yMm}, {xMm, yMm: bottom}, CUT_MM);
  job.line({xMm: right, yMm}, {xMm: right, yMm: bottom}, CUT_MM);
}

/** A line of known length shows whether the printer kept the size. */
const SCALE_MM = 50;
const FOOT_PT = 6;

function drawFoot(job: PrintJob, {heightMm}: Paper, words: string): void {
  const yMm = heightMm - MARGIN_MM - FOOT_MM / 2;
  const end = MARGIN_MM + SCALE_MM;
  job.line({xMm: MARGIN_MM, yMm}, {xMm: end, yMm}, 0.2);
  for (const xMm of [MARGIN_MM, end]) job.line({xMm, yMm: yMm - 1}, {xMm, yMm: yMm + 1}, 0.2);
  const told = `${SCALE_MM} mm; if it measures otherwise, print at 100 %. ${words}`;
  const printable = [...told].filter(character => job.unprintable(character).length === 0).join('');
  job.text(printable, {xMm: end + 3, yMm: yMm + 0.7}, FOOT_PT);
}

function assertPrintable(job: PrintJob, {what, heading = '', lines}: Piece): void {
  const strange = job.unprintable([heading, ...lines.map(({text}) => text)].join(''));
  if (strange.length === 0) return;
  throw new Refusal(
    `the face of the labels has no shape for ${strange.map(one => `"${one}"`).join(', ')}`,
    what,
    'Write it in Latin, Greek or Cyrillic letters, or print to a .txt file and set it elsewhere.',
  );
}

function tooLargeForPaper({widthMm, heightMm}: Form, paper: Paper): Refusal {
  return new Refusal(
    `labels of ${widthMm} × ${heightMm} mm do not fit paper of ${paper.widthMm} × ${paper.heightMm} mm`,
    '--size',
    'Give a smaller size in millimetres, such as --size 18x8.',
  );
}

function tooMuch({what}: Piece, {widthMm, heightMm, sizesPt}: Form): Refusal {
  return new Refusal(
    `its text does not fit ${widthMm} × ${heightMm} mm, not even in ${sizesPt.at(-1)} points`,
    what,
    `Give more room, such as --size ${widthMm + 4}x${heightMm + 4}, or shorten what is recorded.`,
  );
}
