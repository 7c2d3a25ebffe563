// The order in which a room is walked: by place, numbers by their size, so that "rack A/2" comes before "rack A/10".

/** Compare two places, or two codes: runs of digits by number, the rest letter by letter. */
export function compareNaturally(a: string, b: string): number {
  if (a === b) return 0;
  const left = partsOf(a);
  const right = partsOf(b);
  for (let i = 0; i < Math.min(left.length, right.length); i++) {
    const order = compareParts(left[i]!, right[i]!);
    if (order !== 0) return order;
  }
  return left.length - right.length || compareText(a, b);
}

/** The shelf or rack that a place belongs to: "rack A" of "rack A/2". */
export function shelfOf(place: string): string {
  const slash = place.lastIndexOf('/');
  return slash < 0 ? place : place.slice(0, slash);
}

/** Letters as they stand, and digits with their number too. */
interface Part {
  readonly text: string;
  readonly number: number;
}

const known = new Map<string, readonly Part[]>();

function partsOf(text: string): readonly Part[] {
  let parts = known.get(text);
  if (parts === undefined) {
    const runs = text.toLowerCase().match(/\d+|\D+/g) ?? [];
    parts = runs.map(run => ({text: run, number: Number(run)}));
    known.set(text, parts);
  }
  return parts;
}

function compareParts(a: Part, b: Part): number {
  return Number.isNaN(a.number) || Number.isNaN(b.number) ? compareText(a.text, b.text) : a.number - b.number;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
