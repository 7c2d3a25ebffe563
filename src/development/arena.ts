// Room for the many short rows of numbers of a forecast: taken one after the other, given back all at once.

/** Numbers in one block: 512 KB. */
const BLOCK = 1 << 16;

const blocks: Float64Array[] = [];
let block = 0;
let used = 0;

/** It begins at `at` of `cells`. */
export interface Row {
  readonly cells: Float64Array;
  readonly at: number;
}

/**
 * A row of numbers, to be used within the work that borrows it.
 * @param zeros so many at its beginning are 0; the others are whatever stood there
 */
export function rowOf(length: number, zeros = length): Row {
  if (block === blocks.length || used + length > blocks[block]!.length) nextBlock(length);
  const cells = blocks[block]!;
  const at = used;
  used += length;
  cells.fill(0, at, at + zeros);
  return {cells, at};
}

function nextBlock(length: number) {
  if (block < blocks.length) block++;
  used = 0;
  if (block === blocks.length || blocks[block]!.length < length)
    blocks.splice(block, 0, new Float64Array(Math.max(BLOCK, length)));
}

/** Work whose rows are all given back at its end: its result must hold none of them. */
export function borrowing<Result>(work: () => Result): Result {
  const [blockBefore, usedBefore] = [block, used];
  try {
    return work();
  } finally {
    block = blockBefore;
    used = usedBefore;
  }
}
