// The normal distribution, and points to integrate over it.

/** Probability below z. Abramowitz & Stegun 1964, 26.2.17 (error under 7.5e-8), from memory. */
export function normalShare(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const beyond = normalDensity(z) * series;
  return z > 0 ? 1 - beyond : beyond;
}

export function normalDensity(z: number): number {
  return Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI);
}

/** Evenly spaced points of the standard normal with weights that sum to one: for smooth functions all but exact. */
export function normalPoints(
  reach: number,
  step: number,
): readonly {readonly z: number; readonly weight: number}[] {
  const half = Math.round(reach / step);
  const points = Array.from({length: 2 * half + 1}, (_, i) => {
    const z = (i - half) * step;
    return {z, weight: normalDensity(z)};
  });
  const whole = points.reduce((sum, {weight}) => sum + weight, 0);
  return points.map(({z, weight}) => ({z, weight: weight / whole}));
}
