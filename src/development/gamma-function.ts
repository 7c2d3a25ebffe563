// The gamma function and its regularised incomplete form.

/** ln Γ(x) for x > 0: Stirling's series (DLMF 5.11.1, from memory), entered from x ≥ 10 where it has 12 digits. */
export function lnGamma(x: number): number {
  let product = 1;
  let at = x;
  while (at < 10) product *= at++;
  const inverse = 1 / (at * at);
  const series = (1 / 12 - inverse * (1 / 360 - inverse * (1 / 1260 - inverse / 1680))) / at;
  return (at - 0.5) * Math.log(at) - at + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}

/** ln of the number of ways to choose k of n; between whole numbers as ln Γ leads. */
export function lnChoose(n: number, k: number): number {
  return lnGamma(n + 1) - lnGamma(k + 1) - lnGamma(n - k + 1);
}

/**
 * P(shape, x) = γ(shape, x) / Γ(shape): the distribution function of a gamma variable of scale 1. The power series
 * (DLMF 8.11.4) below the mean, Legendre's continued fraction (DLMF 8.9.2) above it; both from memory.
 */
export function regularisedGamma(shape: number, x: number): number {
  if (!(x > 0)) return 0;
  const front = Math.exp(shape * Math.log(x) - x - lnGamma(shape));
  return x < shape + 1 ? (front / shape) * powerSeries(shape, x) : 1 - front * continuedFraction(shape, x);
}

const ENOUGH = 1e-14;

/** 1 + x/(a+1) + x²/((a+1)(a+2)) + … */
function powerSeries(shape: number, x: number): number {
  let term = 1;
  let sum = 1;
  for (let n = 1; term > ENOUGH * sum; n++) {
    term *= x / (shape + n);
    sum += term;
  }
  return sum;
}

/** 1/(x+1−a− 1(1−a)/(x+3−a− 2(2−a)/(x+5−a− …))), from the front by Lentz's rule. */
function continuedFraction(shape: number, x: number): number {
  let b = x + 1 - shape;
  let d = 1 / b;
  let c = Number.POSITIVE_INFINITY;
  let value = d;
  for (let n = 1; ; n++) {
    const a = -n * (n - shape);
    b += 2;
    d = 1 / (b + a * d);
    c = b + a / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < ENOUGH) return value;
  }
}
