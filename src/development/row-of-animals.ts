// Classes of animals whose numbers need not be whole, as whole animals.

/** So many animals, each of which is of a class with these chances. */
export interface Animals {
  readonly count: number;
  readonly of: readonly {readonly place: number; readonly share: number}[];
}

/** Less than this of an animal is none. */
const NONE = 1e-6;

/**
 * The animals laid in a row, class after class: those that lie whole within a class are of it, and one that lies across
 * the border of several is of each with its part. Only the sum of the counts must be whole.
 * @param counts of neighbouring classes that are most alike
 */
export function rowOfAnimals(counts: readonly number[]): readonly Animals[] {
  const row: Animals[] = [];
  let across: {place: number; share: number}[] = [];
  let filled = 0;
  counts.forEach((count, place) => {
    let left = count;
    if (filled > 0) {
      const share = Math.min(left, 1 - filled);
      across.push({place, share});
      filled += share;
      left -= share;
      if (filled < 1 - NONE) return;
      row.push({count: 1, of: across});
      across = [];
      filled = 0;
    }
    const whole = Math.floor(left + NONE);
    if (whole > 0) row.push({count: whole, of: [{place, share: 1}]});
    if (left - whole > NONE) {
      filled = left - whole;
      across = [{place, share: filled}];
    }
  });
  return row;
}
