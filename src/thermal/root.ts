// Where a function is zero.

/** The root between two points at which f has unlike signs, as near as numbers can tell: halving, until nothing is left to halve. */
export function rootBetween(f: (x: number) => number, a: number, b: number): number {
  const rising = f(a) < f(b);
  let [low, high] = [Math.min(a, b), Math.max(a, b)];
  for (;;) {
    const middle = (low + high) / 2;
    if (middle <= low || middle >= high) return middle;
    if (f(middle) < 0 === (a < b ? rising : !rising)) low = middle;
    else high = middle;
  }
}
