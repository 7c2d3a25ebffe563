// Rows of text in aligned columns, for people at a terminal.
import stringWidth from 'fast-string-width';

export interface Column<Row> {
  readonly head: string;
  readonly cell: (row: Row) => string;
  /** Numbers stand to the right. */
  readonly right?: boolean;
}

/** A heading, a rule and one line a row; columns are as wide as their widest cell, two spaces between. */
export function textTable<Row>(rows: readonly Row[], columns: readonly Column<Row>[]): string {
  const lines = [columns.map(({head}) => head), ...rows.map(row => columns.map(({cell}) => cell(row)))];
  const widths = columns.map((_, i) => Math.max(...lines.map(line => stringWidth(line[i]!))));
  const aligned = lines.map(line =>
    line
      .map((cell, i) => {
        const space = ' '.repeat(widths[i]! - stringWidth(cell));
        return columns[i]!.right === true ? space + cell : cell + space;
      })
      .join('  ')
      .trimEnd(),
  );
  return [
    aligned[0]!,
    '─'.repeat(widths.reduce((sum, width) => sum + width + 2, -2)),
    ...aligned.slice(1),
  ].join('\n');
}
