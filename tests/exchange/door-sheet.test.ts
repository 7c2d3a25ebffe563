import {PDFDocument} from 'pdf-lib';
import {describe, expect, it} from 'vitest';
import type {DoorSheet} from '../../src/exchange/door-sheet/door-sheet.ts';
import {doorSheetPdf} from '../../src/exchange/door-sheet/pdf.ts';
import {doorSheetText} from '../../src/exchange/door-sheet/text.ts';

const sheet = (rows: number): DoorSheet => ({
  title: 'Nordraum: care',
  cautions: ['hairs irritate: gloves'],
  days: [
    {
      heading: 'Fri 12 June',
      aside: `${rows} to do, about 37 min`,
      remarks: ['logger L1 has said nothing since Thursday. Look at its battery.'],
      shelves: [
        {
          place: 'rack A',
          who: 'Łucja Ærø',
          rows: Array.from({length: rows}, (_, i) => ({
            unit: `C${i + 1}`,
            what: 'feed 18 larvae',
            until: 'by 21:50',
            ask: ['food left', 'mould', 'alive'],
            caution: 1,
          })),
        },
      ],
    },
  ],
});

describe('the sheet for the door', () => {
  it('has a box to tick, lines to fill and the caution of each task, 80 columns wide', () => {
    const text = doorSheetText(sheet(1));
    expect(text).toContain(
      '[ ]  C1     feed 18 larvae                                          by 21:50 (1)',
    );
    expect(text).toContain('            food left ________ mould ________ alive ________');
    expect(text).toContain('1  hairs irritate: gloves');
    expect(text).toContain('safety data sheets');
    for (const line of text.split('\n')) expect(line.length).toBeLessThanOrEqual(80);
  });

  it('is a PDF on A4 that turns the page where a list is long', async () => {
    const {bytes, pages} = await doorSheetPdf(sheet(60), Date.parse('2031-06-12T06:00Z'));
    const read = await PDFDocument.load(bytes);
    expect(read.getPageCount()).toBe(pages);
    expect(pages).toBeGreaterThan(1);
    const {width, height} = read.getPage(0).getSize();
    expect([Math.round((width / 72) * 25.4), Math.round((height / 72) * 25.4)]).toEqual([210, 297]);
    expect((await doorSheetPdf(sheet(1), 0)).pages).toBe(1);
  });
});
