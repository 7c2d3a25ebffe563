// Sheets of paper, in millimetres.

export interface Paper {
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A4: ISO 216. Letter: ANSI/ASME Y14.1, 8½ by 11 inches. */
export const papers = {
  a4: {widthMm: 210, heightMm: 297},
  letter: {widthMm: 215.9, heightMm: 279.4},
} as const satisfies Readonly<Record<string, Paper>>;

export type PaperName = keyof typeof papers;

/** PDF counts in points, 72 to the inch (ISO 32000-1, 8.3.2.3); an inch is 25.4 mm. */
export const POINTS_PER_MM = 72 / 25.4;
