// What stands in records, as people say it.

/** A day or instant as written, to the minute and without its offset: "2026-05-30 22:00". */
export function whenWritten(iso: string): string {
  return iso.slice(0, 16).replace('T', ' ');
}

/** "40 galls", "1.2 kg of cherries": what animals are hidden in. */
export function materialInWords({what, amount, unit}: {what: string; amount: number; unit: string}): string {
  return unit === 'pieces' ? `${amount} ${what}` : `${amount} ${unit} of ${what}`;
}

/** A task or the key of an answer: "change-water" is "change water", "waterC" is "water °C". */
export function spoken(name: string): string {
  return name
    .replace(/([a-z])C$/, '$1 °C')
    .replace(/([a-z])([A-Z])/g, (_, end: string, start: string) => `${end} ${start.toLowerCase()}`)
    .replaceAll('-', ' ');
}
