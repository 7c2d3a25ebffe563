// How much a rule takes, as a person reads and writes it: "0.12 mg food each a day", "10 mL medium", "25 % of the water".
import type {Rule} from '../records/state.ts';

type Amount = NonNullable<Rule['amount']>;

/** What to say where one cannot be read. */
export const HOW_MUCH =
  'Write 1 prey each; 46 aphids each a day; larva-1 5.5, larva-4 46 aphids each a day; 1 g meat each in all; 10 mL medium, however many there are; 25 % of the water; or none';

/** As it is read back. */
export function howMuchText(amount: Amount): string {
  if ('share' in amount) return `${Number((100 * amount.share).toPrecision(4))} % of the water`;
  if ('whole' in amount) return `${amount.whole} ${amount.of}`;
  const {each, of, per} = amount;
  const often = per === 'day' ? ' a day' : per === 'life' ? ' in all' : '';
  const numbers =
    typeof each === 'number'
      ? `${each}`
      : Object.entries(each)
          .map(([stage, one]) => `${stage} ${one}`)
          .join(', ');
  return `${numbers} ${of} each${often}`;
}

/** @returns null for none at all, undefined where it cannot be read */
export function readHowMuch(text: string): Amount | null | undefined {
  const said = text.trim();
  if (/^(none|no)$/i.test(said)) return null;
  const [, percent] = /^([\d.,]+)\s*%(?:\s+of\s+the\s+water)?$/i.exec(said) ?? [];
  if (percent !== undefined) return {share: numberOf(percent) / 100};
  const [, before, often] = /^(.*\S)\s+each(?:\s+(a day|in all))?$/i.exec(said) ?? [];
  const foods = readFoods(before ?? said.replace(/,?\s+however many.*$/i, ''));
  if (foods === undefined) return undefined;
  const {each, of} = foods;
  if (before === undefined) return typeof each === 'number' ? {whole: each, of} : undefined;
  if (often === undefined) return {each, of};
  return {each, of, per: often.toLowerCase() === 'a day' ? 'day' : 'life'};
}

/** "46 aphids", "larva-1 5.5, larva-4 46 aphids": only the last names the food. */
function readFoods(text: string): {each: number | Record<string, number>; of: string} | undefined {
  const parts = text.split(/,\s+/).map(part => FOOD.exec(part.trim()));
  const of = parts.at(-1)?.[3];
  if (of === undefined || parts.slice(0, -1).some(part => part === null || part[3] !== undefined))
    return undefined;
  const numbers = parts.map(part => [part?.[1], numberOf(part?.[2] ?? '')] as const);
  if (numbers.some(([, number]) => !(number > 0))) return undefined;
  const [[stage, number]] = numbers as [(typeof numbers)[0]];
  if (numbers.length === 1 && stage === undefined) return {each: number, of};
  if (numbers.some(([named]) => named === undefined)) return undefined;
  return {each: Object.fromEntries(numbers), of};
}

const FOOD = /^(?:((?:larva|nymph)(?:-[1-9]\d?)?)\s+)?([\d.,]+)(?:\s*([^\d\s.,].*))?$/;

function numberOf(word: string): number {
  return Number(word.replace(',', '.'));
}
