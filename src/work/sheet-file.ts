// Labels or cards as a file: a PDF in true millimetres, or plain text, by the ending of its name.
import {extname} from 'node:path';
import {labelDay} from '../exchange/labels/label-dates.ts';
import type {Piece, Section} from '../exchange/labels/label-pdf.ts';
import {type PaperName, papers} from '../exchange/pdf/paper.ts';
import {Refusal} from '../records/refusal.ts';
import type {Desk} from './desk.ts';

export interface SheetWishes {
  /** Of one piece; default: that of its form. */
  readonly size?: {readonly widthMm: number; readonly heightMm: number} | undefined;
  /** Default: a4. */
  readonly paper?: PaperName | undefined;
  /** With a square code that holds the specimen code. */
  readonly square?: boolean;
}

export interface SheetFile {
  readonly content: Uint8Array | string;
  /** Sheets of paper; null for text. */
  readonly pages: number | null;
}

/** @throws Refusal where the name ends otherwise, or a text does not fit */
export async function sheetFile(
  file: string,
  sections: readonly Section[],
  {paper = 'a4'}: SheetWishes,
  {room, civil, now}: Desk,
): Promise<SheetFile> {
  switch (extname(file).toLowerCase()) {
    case '.txt':
      return {content: textOf(sections.flatMap(({strips}) => strips)), pages: null};
    case '.pdf': {
      // Loaded only now: it is large, and few commands print.
      const {labelPdf} = await import('../exchange/labels/label-pdf.ts');
      const title = `${room.name}, ${labelDay(civil.dayOf(now))}`;
      const {bytes, pages} = await labelPdf(sections, papers[paper], {title, now});
      return {content: bytes, pages};
    }
    default:
      throw new Refusal('the file is neither a PDF nor text', file, 'Let its name end in .pdf or .txt.');
  }
}

/** One after the other, a blank line between them and one more between strips; lines are not broken. */
export function textOf(strips: readonly (readonly Piece[])[]): string {
  const piece = ({heading, lines}: Piece) =>
    [...(heading === undefined ? [] : [heading]), ...lines.map(({text}) => text), ''].join('\n');
  return strips.map(strip => strip.map(piece).join('\n')).join('\n\n');
}

/** The form in the size that a person asked for. */
export function sizedForm(form: Section['form'], {size}: SheetWishes): Section['form'] {
  return size === undefined ? form : {...form, ...size, tallerMm: []};
}
