// The order in which a room is walked: by place, numbers by their size, so that "rack A/2" comes before "rack A/10".

/** Compare two places, or two codes: runs of digits by number, the rest letter by letter. */
export function compareNaturally(a: string, b: string): number {
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

const known = new Map<string, readonly string[]>();

function partsOf(text: string): readonly string[] {
  let parts = known.get(text);
  if (parts === undefined) {
    parts = text.toLowerCase().match(/\d+|\D+/g) ?? [];
    known.set(text, parts);
  }
  return parts;
}

function compareParts(a: string, b: string): number {
  const [left, right] = [Number(a), Number(b)];
  return Number.isNaN(left) || Number.isNaN(right) ? compareText(a, b) : left - right;
}

function compareText(a: string, b: string): number {
  return a < b ? -1 : a > b ? 1 : 0;
}
