// A PDF as another program reads it: pdf.js gives the size of the pages, the text with its places, and the pixels.
import {createCanvas} from '@napi-rs/canvas';
import {getDocument} from 'pdfjs-dist/legacy/build/pdf.mjs';

const MM_PER_POINT = 25.4 / 72;

export interface ReadText {
  readonly text: string;
  readonly sizePt: number;
  /** The left end of the base line, from the top left corner of the page. */
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
}

export interface ReadPage {
  readonly widthMm: number;
  readonly heightMm: number;
  /** In the order in which it was set. */
  readonly texts: readonly ReadText[];
  /** Its upper left part, drawn at this resolution. */
  pixels(dotsPerInch: number, widthMm: number, heightMm: number): Promise<Pixels>;
}

/** Red, green, blue and opacity of every pixel, row by row. */
export interface Pixels {
  readonly data: Uint8ClampedArray;
  readonly width: number;
  readonly height: number;
}

export async function readPdf(bytes: Uint8Array): Promise<ReadPage[]> {
  const document = await getDocument({data: Uint8Array.from(bytes), verbosity: 0}).promise;
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const [left = 0, bottom = 0, right = 0, top = 0] = page.view;
    const {items} = await page.getTextContent();
    pages.push({
      widthMm: (right - left) * MM_PER_POINT,
      heightMm: (top - bottom) * MM_PER_POINT,
      texts: items.flatMap(item => {
        if (!('str' in item) || item.str === '') return [];
        const [, , , sizePt, x, y] = item.transform as number[];
        return {
          text: item.str,
          sizePt: sizePt!,
          xMm: x! * MM_PER_POINT,
          yMm: (top - y!) * MM_PER_POINT,
          widthMm: item.width * MM_PER_POINT,
        };
      }),
      async pixels(dotsPerInch, widthMm, heightMm) {
        const viewport = page.getViewport({scale: dotsPerInch / 72});
        const dots = (mm: number) => Math.round((mm * dotsPerInch) / 25.4);
        const canvas = createCanvas(dots(widthMm), dots(heightMm));
        const {width, height} = canvas;
        await page.render({canvas: null, canvasContext: canvas.getContext('2d') as never, viewport}).promise;
        return {data: canvas.getContext('2d').getImageData(0, 0, width, height).data, width, height};
      },
    });
  }
  return pages;
}

/** A part of a page. */
export function partOf(pixels: Pixels, x: number, y: number, width: number, height: number): Pixels {
  const data = new Uint8ClampedArray(width * height * 4);
  for (let row = 0; row < height; row++) {
    const from = ((y + row) * pixels.width + x) * 4;
    data.set(pixels.data.subarray(from, from + width * 4), row * width * 4);
  }
  return {data, width, height};
}
