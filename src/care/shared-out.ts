// Animals that no unit can take alone, shared out among several: the fewest units, and of those empty ones first.

export interface Space {
  readonly unit: string;
  /** How many it can take. */
  readonly holds: number;
  /** Nobody lives in it. */
  readonly empty: boolean;
}

/** How many go into which unit; undefined where all of them together have no room. */
export function sharedOut(
  animals: number,
  spaces: readonly Space[],
): {readonly unit: string; readonly animals: number}[] | undefined {
  const largest = (empty: boolean) =>
    spaces
      .filter(space => space.empty === empty && space.holds > 0)
      .sort((a, b) => b.holds - a.holds || (a.unit < b.unit ? -1 : 1));
  const [free, shared] = [largest(true), largest(false)];
  for (let units = 1; units <= spaces.length; units++)
    for (let empty = Math.min(units, free.length); empty >= 0; empty--) {
      const taken = [...free.slice(0, empty), ...shared.slice(0, units - empty)];
      if (taken.length === units && taken.reduce((sum, {holds}) => sum + holds, 0) >= animals)
        return filled(animals, taken);
    }
  return undefined;
}

function filled(animals: number, spaces: readonly Space[]) {
  let left = animals;
  return spaces.map(({unit, holds}) => {
    const here = Math.min(left, holds);
    left -= here;
    return {unit, animals: here};
  });
}
