// Goes through the data rows of a file whose layout is known.
import {eachBlock} from './blocks.ts';
import type {Layout} from './layout.ts';
import {isBlank} from './sample.ts';
import type {UsualRows} from './usual-rows.ts';
import {rowAt} from './written-row.ts';

/** A file as text, and what was understood of it. */
export interface Source {
  /** How to name it to a person. */
  readonly file: string;
  /** Its bytes, as plainChunks gives them. */
  readonly chunks: Iterable<Uint8Array>;
  readonly decode: (bytes: Uint8Array) => string;
  readonly layout: Layout;
}

export interface OddRow {
  readonly cells: readonly string[];
  readonly unclosed: boolean;
  /** The line it begins on, from 1. */
  readonly line: number;
}

/** Hands every data row that is not blank to `odd`, save those that `usual` reads by itself. */
export function eachRow(
  {file, chunks, decode, layout: {delimiter, firstLine}}: Source,
  usual: UsualRows | undefined,
  odd: (row: OddRow) => void,
): void {
  let line = 1;
  eachBlock(chunks, file, (block, final) => {
    let at = 0;
    while (at < block.length) {
      if (usual !== undefined && line >= firstLine) {
        const {next, rows} = usual.read(block, at);
        line += rows;
        at = next;
        if (at === block.length) break;
      }
      const row = rowAt(block, at, block.length, final, delimiter, decode);
      if (row === undefined) break;
      if (line >= firstLine && !isBlank(row.cells)) odd({...row, line});
      line += row.lines;
      at = row.next;
    }
    return at;
  });
}
