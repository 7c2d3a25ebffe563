// Curves in characters: a vertical span in each step of time becomes dots of two by four to the cell, or one
// sign a cell where a terminal has no such dots.

/** Dots of a cell in Braille patterns, by column and row from the top (Unicode standard, block U+2800–U+28FF). */
const BRAILLE_DOTS = [
  [0x01, 0x02, 0x04, 0x40],
  [0x08, 0x10, 0x20, 0x80],
] as const;
const BRAILLE_BLANK = 0x2800;

export interface DotGrid {
  /** Steps of time and of value that it can tell apart. */
  readonly steps: number;
  readonly levels: number;
  /** Mark a step from one level (0 is the top) to another. */
  mark(step: number, fromLevel: number, toLevel: number, sign: string): void;
  /** The sign of a cell; undefined where nothing is marked. */
  cell(column: number, row: number): string | undefined;
}

export function dotGrid(columns: number, rows: number, braille: boolean): DotGrid {
  return braille ? brailleGrid(columns, rows) : plainGrid(columns, rows);
}

function brailleGrid(columns: number, rows: number): DotGrid {
  const cells = new Uint8Array(columns * rows);
  return {
    steps: columns * 2,
    levels: rows * 4,
    mark(step, fromLevel, toLevel) {
      for (let level = fromLevel; level <= toLevel; level++)
        cells[(level >> 2) * columns + (step >> 1)]! |= BRAILLE_DOTS[step & 1]![level & 3]!;
    },
    cell(column, row) {
      const dots = cells[row * columns + column]!;
      return dots === 0 ? undefined : String.fromCharCode(BRAILLE_BLANK + dots);
    },
  };
}

function plainGrid(columns: number, rows: number): DotGrid {
  const cells: (string | undefined)[] = Array.from({length: columns * rows});
  return {
    steps: columns,
    levels: rows,
    mark(step, fromLevel, toLevel, sign) {
      for (let level = fromLevel; level <= toLevel; level++) cells[level * columns + step] = sign;
    },
    cell: (column, row) => cells[row * columns + column],
  };
}
