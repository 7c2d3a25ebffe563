// Rest and what is not out, in words.
import type {NotOut} from '../development/not-out.ts';
import type {Chill} from '../development/rest.ts';

/** "late 12 %, in diapause 60 %, dead 28 %", the likeliest first. */
export function notOutWords({late, diapause, dead}: NotOut): string {
  const chances: readonly (readonly [string, number])[] = [
    ['late', late],
    ['in diapause', diapause],
    ['dead', dead],
  ];
  return chances
    .filter(([, chance]) => chance >= 0.005)
    .toSorted(([, a], [, b]) => b - a)
    .map(([name, chance]) => `${name} ${Math.round(chance * 100)} %`)
    .join(', ');
}

/** @param when an instant in words; of null, that it is not known */
export function chillWords(
  {belowC, unit, required, gathered, completeDays}: Chill,
  when: (days: number | null) => string,
): string {
  const amount = unit === 'days' ? 'd' : 'degree-days';
  const so = `${Math.round(gathered)} of ${Math.round(required)} ${amount} below ${belowC} °C`;
  if (completeDays === null) return `${so}; never enough at the temperatures expected`;
  return `${so}; ${gathered >= required ? 'enough since' : 'enough'} ${when(completeDays)}`;
}
