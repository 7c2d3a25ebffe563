// The known word nearest to one that is not known, for refusals.

/**
 * The nearest by single-character edits (insert, delete, replace; upper and lower case alike), undefined where
 * none is near: more than two edits away, or more than half of the word.
 * Levenshtein distance, row by row: Wagner & Fischer 1974, Journal of the ACM 21(1), 168–173 (from memory).
 */
export function nearest(word: string, known: Iterable<string>): string | undefined {
  let best: string | undefined;
  let fewest = Math.min(2, Math.floor(word.length / 2));
  for (const other of known) {
    if (Math.abs(other.length - word.length) > fewest) continue;
    const edits = editsBetween(word.toLowerCase(), other.toLowerCase());
    if (edits > fewest || (edits === fewest && best !== undefined)) continue;
    best = other;
    fewest = edits;
  }
  return best;
}

function editsBetween(a: string, b: string): number {
  let above = Array.from({length: b.length + 1}, (_, column) => column);
  for (let row = 1; row <= a.length; row++) {
    const current = [row];
    for (let column = 1; column <= b.length; column++) {
      const replaced = above[column - 1]! + (a[row - 1] === b[column - 1] ? 0 : 1);
      current.push(Math.min(replaced, above[column]! + 1, current[column - 1]! + 1));
    }
    above = current;
  }
  return above[b.length]!;
}
