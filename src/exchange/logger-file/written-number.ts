// A measured value as a cell holds it.

const NUMBER =
  /^([+\-−]?)(\d+(?:[.,]\d*)?|[.,]\d+)(e[+-]?\d+)?(?:\s*(?:[°º˚�]?\s?[CFK]|[℃℉]|%(?:\s?RH)?))?$/i;

/** The number of a cell, with decimal point or comma, its unit behind it or not; undefined where there is none. */
export function readNumber(cell: string): number | undefined {
  const [, sign, digits, exponent = ''] = NUMBER.exec(cell) ?? [];
  if (digits === undefined) return undefined;
  const size = Number(`${digits.replace(',', '.')}${exponent}`);
  return sign === '-' || sign === '−' ? -size : size;
}
