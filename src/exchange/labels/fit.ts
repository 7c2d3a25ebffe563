// Lines broken and set so that they fit a label: as large as they can be, never smaller than can be read.
import type {Weight} from '../pdf/face.ts';

export interface SetLine {
  readonly text: string;
  /** Default: regular. */
  readonly weight?: Weight;
}

/** Width of a line in a size, in millimetres. */
export type Measure = (text: string, sizePt: number, weight?: Weight) => number;

export interface Fitted {
  readonly lines: readonly SetLine[];
  readonly sizePt: number;
}

export interface Box {
  readonly widthMm: number;
  readonly heightMm: number;
}

const MM_PER_POINT = 25.4 / 72;

/**
 * Lines stand as far apart as they are high: 4 points in a 4 point face on pinned labels (Mississippi Entomological
 * Museum Report 2016-01).
 * @param sizesPt to be tried, the largest first
 * @returns undefined where not even the smallest fits
 */
export function fitted(
  lines: readonly SetLine[],
  {widthMm, heightMm}: Box,
  sizesPt: readonly number[],
  measure: Measure,
): Fitted | undefined {
  for (const sizePt of sizesPt) {
    const broken = lines.flatMap(line =>
      brokenText(line.text, widthMm, text => measure(text, sizePt, line.weight)).map(text => ({
        ...line,
        text,
      })),
    );
    if (broken.length * sizePt * MM_PER_POINT <= heightMm) return {lines: broken, sizePt};
  }
  return undefined;
}

/** Broken between words; a word that is wider than the label is broken inside. */
function brokenText(line: string, widthMm: number, width: (text: string) => number): string[] {
  const broken: string[] = [];
  let now = '';
  for (const word of line.split(/\s+/).filter(word => word !== '')) {
    const longer = now === '' ? word : `${now} ${word}`;
    if (width(longer) <= widthMm) {
      now = longer;
      continue;
    }
    if (now !== '') broken.push(now);
    now = '';
    for (const character of word) {
      if (now !== '' && width(now + character) > widthMm) {
        broken.push(now);
        now = '';
      }
      now += character;
    }
  }
  return now === '' ? broken : [...broken, now];
}
