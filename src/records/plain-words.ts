// What stands in records, as people say it.
import type {RecordOf} from './schema/index.ts';

/** A day or instant as written, to the minute and without its offset: "2026-05-30 22:00". */
export function whenWritten(iso: string): string {
  return iso.slice(0, 16).replace('T', ' ');
}

/** "40 galls", "1.2 kg of cherries": what animals are hidden in. */
export function materialInWords({what, amount, unit}: {what: string; amount: number; unit: string}): string {
  return unit === 'pieces' ? `${amount} ${what}` : `${amount} ${unit} of ${what}`;
}

/** "3 labels", "1 unit" */
export function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}

/** "0.5 L each, no warmer than 12 °C, aerated water" */
export function needsInWords({
  litresEach,
  coolestC,
  warmestC,
  aerated,
  predatory,
  besideEaters,
}: NonNullable<RecordOf<'lot'>['needs']>): string {
  const said = [
    litresEach === undefined ? undefined : `${litresEach} L each`,
    coolestC === undefined ? undefined : `no cooler than ${coolestC} °C`,
    warmestC === undefined ? undefined : `no warmer than ${warmestC} °C`,
    aerated === undefined ? undefined : aerated ? 'aerated water' : 'water that need not be aerated',
    predatory === undefined
      ? undefined
      : predatory
        ? 'by themselves, as they eat others'
        : 'not as eaters of others',
    besideEaters === undefined
      ? undefined
      : besideEaters
        ? 'also beside animals that eat others'
        : 'nobody beside them that eats others',
  ];
  return said.filter(part => part !== undefined).join(', ');
}

/** A task or the key of an answer: "change-water" is "change water", "waterC" is "water °C". */
export function spoken(name: string): string {
  return name
    .replace(/([a-z])C$/, '$1 °C')
    .replace(/([a-z])([A-Z])/g, (_, end: string, start: string) => `${end} ${start.toLowerCase()}`)
    .replaceAll('-', ' ');
}
