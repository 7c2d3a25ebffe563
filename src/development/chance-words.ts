// Chances as people say them.

/** "about 3 in 10", of many. */
export function asShare(chance: number): string {
  const tenths = Math.round(chance * 10);
  if (tenths >= 10) return 'nearly all';
  if (tenths <= 0) return `about 1 in ${Math.round(1 / Math.max(chance, 0.005))}`;
  return `about ${tenths} in 10`;
}
