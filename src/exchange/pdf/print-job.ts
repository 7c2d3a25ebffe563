// A PDF being made: pages measured in millimetres from the top left corner, set in one embedded face.
import fontkit from '@pdf-lib/fontkit';
import {
  asPDFNumber,
  beginText,
  endText,
  fill,
  grayscale,
  PDFDocument,
  type PDFFont,
  type PDFHexString,
  PDFOperator,
  PDFOperatorNames,
  type PDFPage,
  setFontAndSize,
  setTextMatrix,
  showText,
} from 'pdf-lib';
import type {Instant} from '../../records/entry.ts';
import {faceBytes, type Weight} from './face.ts';
import {type Paper, POINTS_PER_MM} from './paper.ts';

/** A place on a page, from its top left corner. */
export interface At {
  readonly xMm: number;
  readonly yMm: number;
}

export interface Rectangle extends At {
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface PrintJob {
  /** Begin a page; what follows is drawn on it. */
  page(paper: Paper): void;
  /** One line of text; `at` is the left end of its base line. */
  text(text: string, at: At, sizePt: number, weight?: Weight): void;
  /** A straight line in grey. */
  line(from: At, to: At, thicknessMm: number): void;
  /** Black areas, each from its top left corner. */
  areas(rectangles: readonly Rectangle[]): void;
  widthMm(text: string, sizePt: number, weight?: Weight): number;
  /** Characters that the face has no shape for. */
  unprintable(text: string): string[];
  /** The finished file. */
  bytes(): Promise<Uint8Array>;
}

/**
 * @param title told by viewers of the file
 * @param now written into the file as when it was made
 */
export async function openPrintJob(title: string, now: Instant): Promise<PrintJob> {
  const document = await PDFDocument.create();
  document.registerFontkit(fontkit);
  document.setTitle(title);
  document.setProducer('Teneral');
  document.setCreationDate(new Date(now));
  document.setModificationDate(new Date(now));
  const faces = {
    regular: await faceOf(document, 'regular'),
    bold: await faceOf(document, 'bold'),
    italic: await faceOf(document, 'italic'),
  };
  const known = new Set(faces.regular.font.getCharacterSet());
  let page: PDFPage | undefined;

  const current = (): PDFPage => {
    if (page === undefined) throw new RangeError('a page comes before what is drawn on it');
    return page;
  };
  const place = ({xMm, yMm}: At) => ({
    x: xMm * POINTS_PER_MM,
    y: current().getHeight() - yMm * POINTS_PER_MM,
  });

  return {
    page({widthMm, heightMm}) {
      page = document.addPage([widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM]);
    },
    text(text, at, sizePt, weight = 'regular') {
      const {x, y} = place(at);
      const face = faces[weight];
      current().pushOperators(
        beginText(),
        setFontAndSize(face.keyOn(current()), sizePt),
        setTextMatrix(1, 0, 0, 1, x, y),
        showText(face.encoded(text.normalize('NFC'))),
        endText(),
      );
    },
    line(from, to, thicknessMm) {
      const [start, end] = [place(from), place(to)];
      current().drawLine({start, end, thickness: thicknessMm * POINTS_PER_MM, color: grayscale(0.6)});
    },
    areas(rectangles) {
      const drawn = rectangles.map(({xMm, yMm, widthMm, heightMm}) => {
        const {x, y} = place({xMm, yMm: yMm + heightMm});
        const sides = [x, y, widthMm * POINTS_PER_MM, heightMm * POINTS_PER_MM];
        return PDFOperator.of(PDFOperatorNames.AppendRectangle, sides.map(asPDFNumber));
      });
      if (drawn.length > 0) current().pushOperators(...drawn, fill());
    },
    widthMm(text, sizePt, weight = 'regular') {
      let width = 0;
      for (const character of text.normalize('NFC')) width += faces[weight].widthOf(character);
      return (width * sizePt) / POINTS_PER_MM;
    },
    unprintable: text => [
      ...new Set([...text.normalize('NFC')].filter(character => !known.has(character.codePointAt(0)!))),
    ],
    bytes: () => document.save(),
  };
}

/** A face in a document. Thousands of labels share few lines, and shaping one is slow, so each is shaped once. */
async function faceOf(document: PDFDocument, weight: Weight) {
  const font = await embedded(document, weight);
  const lines = new Map<string, PDFHexString>();
  const widths = new Map<string, number>();
  const keys = new WeakMap<PDFPage, ReturnType<PDFPage['node']['newFontDictionary']>>();
  return {
    font,
    encoded: (text: string) => remembered(lines, text, () => font.encodeText(text)),
    widthOf: (character: string) => remembered(widths, character, () => font.widthOfTextAtSize(character, 1)),
    keyOn: (page: PDFPage) => remembered(keys, page, () => page.node.newFontDictionary(font.name, font.ref)),
  };
}

/** Only the shapes used go into the file. Ligatures would make text hard to find again in it. */
async function embedded(document: PDFDocument, weight: Weight): Promise<PDFFont> {
  const features = {liga: false, dlig: false, clig: false};
  return document.embedFont(await faceBytes(weight), {subset: true, features});
}

interface Memory<Key, Value> {
  get(key: Key): Value | undefined;
  set(key: Key, value: Value): unknown;
}

function remembered<Key, Value>(memory: Memory<Key, Value>, key: Key, make: () => Value): Value {
  const known = memory.get(key);
  if (known !== undefined) return known;
  const made = make();
  memory.set(key, made);
  return made;
}
