// Printed labels measured: pages, labels and type in millimetres and points, the text read again, the square code
// decoded. pdf.js and jsQR are other people's readers.
import jsqr from 'jsqr';
import {describe, expect, it} from 'vitest';
import {pinForm} from '../../../src/exchange/labels/form.ts';
import {labelPdf, type Piece} from '../../../src/exchange/labels/label-pdf.ts';
import {papers} from '../../../src/exchange/pdf/paper.ts';
import {Refusal} from '../../../src/records/refusal.ts';
import {type Pixels, partOf, readPdf} from './read-pdf.ts';

// Its types tell of a module with a default, its loader hands over the function itself.
const decode: typeof jsqr.default = typeof jsqr === 'function' ? jsqr : jsqr.default;

const told = {title: 'north room, 12.vi.2026', now: Date.UTC(2026, 5, 12)};
const MM_PER_POINT = 25.4 / 72;

const piece = (text: string | readonly string[], square?: string): Piece => ({
  what: 'the label',
  lines: [text].flat().map(line => ({text: line})),
  square,
});

const print = (strips: readonly (readonly Piece[])[], paper: keyof typeof papers = 'a4', form = pinForm) =>
  labelPdf([{form, strips}], papers[paper], told);

const NAMES = ['ŽLUŤOUČKÁ, Příbram', 'Ελληνικά νησιά', 'Кедровая падь', 'leg. Åse & Łucja', '♀ ♂ ½ °'];

describe('labels on paper', () => {
  it('have the pages of their paper: ISO 216 A4 and ANSI letter', async () => {
    for (const [name, paper] of Object.entries(papers)) {
      const {bytes, pages} = await print([[piece('a')]], name as keyof typeof papers);
      const read = await readPdf(bytes);
      expect(read).toHaveLength(pages);
      expect(read[0]!.widthMm).toBeCloseTo(paper.widthMm, 3);
      expect(read[0]!.heightMm).toBeCloseTo(paper.heightMm, 3);
    }
  });

  it('are 18 by 8 mm, measured between the lines to cut along on the page as drawn', async () => {
    const strips = Array.from({length: 12}, () => [piece('a'), piece('b'), piece('c')]);
    const [page] = await readPdf((await print(strips)).bytes);
    const dotsPerMm = 300 / 25.4;
    const pixels = await page!.pixels(300, 210, 80);
    const row = Math.round((10 + 4) * dotsPerMm);
    const column = Math.round((10 + 16) * dotsPerMm);
    const across = lineCentres(i => (row * pixels.width + i) * 4, pixels.width, pixels);
    const down = lineCentres(i => (i * pixels.width + column) * 4, pixels.height, pixels);
    expect(across.length).toBe(11);
    for (const [i, at] of across.entries()) expect(at / dotsPerMm).toBeCloseTo(10 + 18 * i, 0.9);
    expect(down.slice(0, 7).length).toBe(7);
    for (const [i, at] of down.entries()) expect(at / dotsPerMm).toBeCloseTo(10 + 8 * i, 0.9);
  });

  it('are set in 4 points 4 points apart, and hold the text that was given, in order', async () => {
    const [page] = await readPdf((await print([NAMES.map(name => piece(name))])).bytes);
    const texts = page!.texts.filter(({sizePt}) => sizePt === 4);
    expect(texts.map(({text}) => text)).toEqual(NAMES);
    const [several] = await readPdf((await print([[piece(['one', 'two', 'three'])]])).bytes);
    const [one, two, three] = several!.texts;
    expect(two!.yMm - one!.yMm).toBeCloseTo(4 * MM_PER_POINT, 4);
    expect(three!.yMm - two!.yMm).toBeCloseTo(4 * MM_PER_POINT, 4);
  });

  it('break long lines between words, inside the label, and never below 3 points', async () => {
    const words = Array.from({length: 24}, (_, i) => `word${i}`).join(' ');
    const [page] = await readPdf((await print([[piece(words)]])).bytes);
    const texts = page!.texts.filter(({sizePt}) => sizePt !== 6);
    expect(texts.map(({text}) => text).join(' ')).toBe(words);
    expect(texts.length).toBeGreaterThan(3);
    for (const {sizePt, xMm, yMm, widthMm} of texts) {
      expect(sizePt).toBeGreaterThanOrEqual(3);
      expect(sizePt).toBeLessThanOrEqual(4);
      expect(xMm).toBeGreaterThan(10);
      expect(xMm + widthMm).toBeLessThan(10 + 18);
      expect(yMm).toBeGreaterThan(10);
      expect(yMm).toBeLessThan(10 + 8);
    }
  });

  it('are all taller where one text needs it, and refuse what does not fit even then', async () => {
    const long = Array.from({length: 27}, (_, i) => `word${i}`).join(' ');
    const [page] = await readPdf((await print([[piece(long), piece('below')]])).bytes);
    expect(page!.texts.find(({text}) => text === 'below')!.yMm).toBeGreaterThan(10 + 9);
    const much = Array.from({length: 90}, (_, i) => `word${i}`).join(' ');
    await expect(print([[{...piece(much), what: 'the data label of A-1'}]])).rejects.toThrow(
      /the data label of A-1: its text does not fit 18 × 10 mm, not even in 3 points/,
    );
  });

  it('refuse letters that the face has no shape for, and name them', async () => {
    await expect(print([[piece('桜 garden')]])).rejects.toThrow(/no shape for "桜"/);
    await expect(print([[piece('桜 garden')]])).rejects.toThrow(Refusal);
  });

  it('carry a square code that another program decodes to the specimen code', async () => {
    for (const code of ['26-031-A-1', 'A', 'Ab_c.d-0123456789012345678901234567890']) {
      const [page] = await readPdf((await print([[piece(code, code)]])).bytes);
      const pixels = await page!.pixels(600, 19, 19);
      const dots = 600 / 25.4;
      const side = Math.round(8 * dots);
      const {data, width, height} = partOf(pixels, Math.round(10 * dots), Math.round(10 * dots), side, side);
      expect(decode(data, width, height)?.data).toBe(code);
    }
  });

  it('tell the scale with a line of 50 mm below every page', async () => {
    const [page] = await readPdf((await print([[piece('a')]])).bytes);
    const foot = page!.texts.find(({text}) => text.includes('50 mm'))!;
    expect(foot.text).toContain('north room, 12.vi.2026, page 1 of 1');
    const dots = 300 / 25.4;
    const pixels = await page!.pixels(300, 62, 297);
    const row = Math.round((297 - 10 - 4) * dots);
    const dark = Array.from({length: Math.round(62 * dots)}, (_, x) => x).filter(
      x => pixels.data[(row * pixels.width + x) * 4]! < 230,
    );
    expect((dark.at(-1)! - dark[0]!) / dots).toBeCloseTo(50, 0);
  });

  it('keep the strip of one specimen together on a page, and put a thousand labels on a few sheets', async () => {
    const strips = Array.from({length: 250}, (_, i) =>
      ['data', 'rearing', 'det', `code-${i}`].map(text => piece(text)),
    );
    const {bytes, pages} = await print(strips);
    const read = await readPdf(bytes);
    expect(read).toHaveLength(pages);
    for (const {texts} of read) {
      const on = (word: string) => texts.filter(({text}) => text.startsWith(word)).length;
      expect(on('data')).toBe(on('code-'));
    }
    const codes = read.flatMap(({texts}) =>
      texts.map(({text}) => text).filter(text => text.startsWith('code-')),
    );
    expect(new Set(codes).size).toBe(250);
  });
});

/** Where lines cross a row or column of pixels: the middle of every run that is not white. */
function lineCentres(indexOf: (i: number) => number, length: number, {data}: Pixels): number[] {
  const centres: number[] = [];
  for (let i = 0; i < length; i++) {
    const start = i;
    while (i < length && data[indexOf(i)]! < 245) i++;
    if (i > start && i - start < 5) centres.push((start + i) / 2);
  }
  return centres;
}
