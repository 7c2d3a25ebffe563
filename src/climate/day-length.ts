// How long the day is at a place.
/**
 * Hours from sunrise to sunset, the upper edge of the sun on the horizon: 0 and 24 beyond the polar circles.
 * Forsythe, Rykiel, Stahl, Wu and Schoolfield 1995, Ecological Modelling 80: 87–95, equations 1 to 3 with p = 0.8333°.
 * Their equations are from memory; tests hold them against the sun at equinox and solstice.
 */
export function dayLengthHours(latitude: number, days: number): number {
  const J = dayOfYear(days);
  const revolution = 0.2163108 + 2 * Math.atan(0.9671396 * Math.tan(0.0086 * (J - 186)));
  const declination = Math.asin(0.39795 * Math.cos(revolution));
  const phi = (latitude * Math.PI) / 180;
  const edge = Math.sin((0.8333 * Math.PI) / 180);
  const cosine = (edge + Math.sin(phi) * Math.sin(declination)) / (Math.cos(phi) * Math.cos(declination));
  return 24 - (24 / Math.PI) * Math.acos(Math.min(1, Math.max(-1, cosine)));
}

/** 1 on 1 January. */
function dayOfYear(days: number): number {
  const at = new Date(days * 86_400_000);
  return Math.floor(days) - Date.UTC(at.getUTCFullYear(), 0, 1) / 86_400_000 + 1;
}
