// What a lot may be: candidates with their weights.

interface Weighted {
  readonly weight: number;
}

/** The candidates, the heaviest first; of equal weight as they were given. */
export function heaviestFirst<Candidate extends Weighted>(candidates: readonly Candidate[]): Candidate[] {
  return candidates.toSorted((a, b) => b.weight - a.weight);
}
