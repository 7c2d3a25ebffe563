// The sheet for the door as a PDF.
import type {Instant} from '../../records/entry.ts';
import {type Paper, papers} from '../pdf/paper.ts';
import {openPrintJob, type PrintJob} from '../pdf/print-job.ts';
import {DEFERS, type DoorDay, type DoorRow, type DoorSheet, type DoorShelf} from './door-sheet.ts';

const MARGIN_MM = 15;
const LINE_MM = 5;
const UNIT_MM = 7;
const WHAT_MM = 24;
const BOX_MM = 3.6;
const THIN_MM = 0.2;
const SIZE_PT = 10;
const SMALL_PT = 8;
/** A line to write on. */
const BLANK_MM = 16;

export async function doorSheetPdf(
  sheet: DoorSheet,
  now: Instant,
  paper: Paper = papers.a4,
): Promise<{readonly bytes: Uint8Array; readonly pages: number}> {
  const pages = new Pages(await openPrintJob(sheet.title, now), paper, sheet.title);
  for (const [i, day] of sheet.days.entries()) {
    if (i > 0) pages.down(LINE_MM);
    drawDay(pages, day);
  }
  if (sheet.cautions.length > 0) {
    pages.down(LINE_MM);
    pages.need(2 * LINE_MM);
    pages.write('Care', MARGIN_MM, SIZE_PT, 'bold');
    pages.down(LINE_MM);
    for (const [n, caution] of sheet.cautions.entries()) pages.paragraph(`${n + 1}  ${caution}`, SMALL_PT);
  }
  pages.down(LINE_MM / 2);
  pages.paragraph(DEFERS, SMALL_PT, 'italic');
  pages.need(2 * LINE_MM);
  pages.down(LINE_MM);
  pages.blank('done by', MARGIN_MM, 55);
  pages.blank('taken over by', MARGIN_MM + 85, 55);
  return {bytes: await pages.job.bytes(), pages: pages.count};
}

function drawDay(pages: Pages, {heading, aside, remarks, shelves}: DoorDay): void {
  pages.need(4 * LINE_MM);
  pages.write(heading, MARGIN_MM, 13, 'bold');
  pages.writeRight(aside, SIZE_PT);
  pages.down(2);
  pages.rule();
  pages.down(LINE_MM);
  for (const remark of remarks) pages.paragraph(`! ${remark}`, SMALL_PT);
  if (shelves.length === 0) pages.paragraph('Nothing is to be done.', SIZE_PT);
  for (const shelf of shelves) drawShelf(pages, shelf);
}

function drawShelf(pages: Pages, {place, who, rows}: DoorShelf): void {
  pages.need(3.5 * LINE_MM);
  pages.down(1.5);
  pages.write(place, MARGIN_MM, SIZE_PT + 1, 'bold');
  if (who !== undefined) pages.writeRight(who, SIZE_PT, 'italic');
  pages.down(LINE_MM + 0.5);
  for (const row of rows) drawRow(pages, row);
}

function drawRow(pages: Pages, {unit, what, until, ask, caution}: DoorRow): void {
  const end = caution === undefined ? until : `${until} (${caution})`;
  const widthMm = pages.rightMm - MARGIN_MM - WHAT_MM - pages.job.widthMm(end, SIZE_PT) - 3;
  const lines = pages.broken(what, SIZE_PT, widthMm);
  pages.need((lines.length + (ask.length > 0 ? 1 : 0)) * LINE_MM);
  pages.box(MARGIN_MM);
  pages.write(unit, MARGIN_MM + UNIT_MM, SIZE_PT, 'bold');
  pages.writeRight(end, SIZE_PT);
  for (const line of lines) {
    pages.write(line, MARGIN_MM + WHAT_MM, SIZE_PT);
    pages.down(LINE_MM);
  }
  let xMm = MARGIN_MM + WHAT_MM;
  for (const label of ask) {
    const width = pages.job.widthMm(label, SMALL_PT) + 1 + BLANK_MM + 3;
    if (xMm > MARGIN_MM + WHAT_MM && xMm + width > pages.rightMm) {
      pages.down(LINE_MM);
      pages.need(LINE_MM);
      xMm = MARGIN_MM + WHAT_MM;
    }
    pages.blank(label, xMm, BLANK_MM);
    xMm += width;
  }
  pages.down(ask.length > 0 ? LINE_MM + 1 : 0.5);
}

/** Where on which page the next line comes. */
class Pages {
  readonly job: PrintJob;
  readonly rightMm: number;
  readonly #paper: Paper;
  readonly #title: string;
  #yMm = 0;
  count = 0;

  constructor(job: PrintJob, paper: Paper, title: string) {
    this.job = job;
    this.#paper = paper;
    this.#title = title;
    this.rightMm = paper.widthMm - MARGIN_MM;
    this.#turn();
  }

  down(mm: number): void {
    this.#yMm += mm;
  }

  /** A new page where so much no longer fits on this one. */
  need(mm: number): void {
    if (this.#yMm + mm > this.#paper.heightMm - MARGIN_MM) this.#turn();
  }

  #turn(): void {
    this.job.page(this.#paper);
    this.count++;
    this.#yMm = MARGIN_MM;
    this.write(this.#title, MARGIN_MM, SMALL_PT);
    this.writeRight(`sheet ${this.count}`, SMALL_PT);
    this.#yMm += 2 * LINE_MM;
  }

  write(text: string, xMm: number, sizePt: number, weight?: 'regular' | 'bold' | 'italic'): void {
    this.job.text(text, {xMm, yMm: this.#yMm}, sizePt, weight);
  }

  writeRight(text: string, sizePt: number, weight?: 'regular' | 'bold' | 'italic'): void {
    this.write(text, this.rightMm - this.job.widthMm(text, sizePt, weight), sizePt, weight);
  }

  rule(): void {
    this.job.line({xMm: MARGIN_MM, yMm: this.#yMm}, {xMm: this.rightMm, yMm: this.#yMm}, THIN_MM);
  }

  box(xMm: number): void {
    const [top, bottom, right] = [this.#yMm - BOX_MM + 0.6, this.#yMm + 0.6, xMm + BOX_MM];
    const corners = [
      {xMm, yMm: top},
      {xMm: right, yMm: top},
      {xMm: right, yMm: bottom},
      {xMm, yMm: bottom},
    ];
    for (const [i, corner] of corners.entries()) this.job.line(corner, corners[(i + 1) % 4]!, THIN_MM * 2);
  }

  /** A label with a line behind it. */
  blank(label: string, xMm: number, lengthMm: number): void {
    this.write(label, xMm, SMALL_PT);
    const from = xMm + this.job.widthMm(label, SMALL_PT) + 1;
    this.job.line({xMm: from, yMm: this.#yMm + 0.6}, {xMm: from + lengthMm, yMm: this.#yMm + 0.6}, THIN_MM);
  }

  paragraph(text: string, sizePt: number, weight?: 'regular' | 'italic'): void {
    for (const line of this.broken(text, sizePt, this.rightMm - MARGIN_MM, weight)) {
      this.need(LINE_MM);
      this.write(line, MARGIN_MM, sizePt, weight);
      this.down(LINE_MM - 0.8);
    }
  }

  /** Text in lines of at most this width; a longer word stands alone. */
  broken(text: string, sizePt: number, widthMm: number, weight?: 'regular' | 'italic'): string[] {
    const lines: string[] = [];
    let now = '';
    for (const word of text.split(/\s+/)) {
      const longer = now === '' ? word : `${now} ${word}`;
      if (now !== '' && this.job.widthMm(longer, sizePt, weight) > widthMm) {
        lines.push(now);
        now = word;
      } else now = longer;
    }
    return [...lines, now];
  }
}
