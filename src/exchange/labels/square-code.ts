// A square code that a camera or scanner reads: QR Code, ISO/IEC 18004. It holds the text and nothing else.
import {create} from 'qrcode';
import type {Rectangle} from '../pdf/print-job.ts';

/** The light margin that readers need, in modules: ISO/IEC 18004, 9.1. */
const QUIET = 4;

/** The dark areas of a square code, its margin within the side; runs of dark modules in a row are one area. */
export function squareCode(text: string, side: Rectangle): Rectangle[] {
  const {modules} = create(text, {errorCorrectionLevel: 'M'});
  const moduleMm = side.widthMm / (modules.size + 2 * QUIET);
  const areas: Rectangle[] = [];
  for (let row = 0; row < modules.size; row++)
    for (let column = 0; column < modules.size; column++) {
      const begin = column;
      while (column < modules.size && modules.get(row, column) !== 0) column++;
      if (column === begin) continue;
      areas.push({
        xMm: side.xMm + (QUIET + begin) * moduleMm,
        yMm: side.yMm + (QUIET + row) * moduleMm,
        widthMm: (column - begin) * moduleMm,
        heightMm: moduleMm,
      });
    }
  return areas;
}
