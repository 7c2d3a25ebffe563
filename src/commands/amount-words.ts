// From the words of a command line to how much a rule takes: --each "0.2 mg food" --per day, --whole, --share.
import {InvalidArgumentError} from 'commander';
import type {Rule} from '../records/state.ts';
import type {Options} from './command.ts';
import {numberWord} from './words.ts';

/**
 * @returns null where it is to have none; undefined where nothing was said of it. Which values are allowed is the
 * record's own affair.
 */
export function amountWords({each, per, whole, share, amount}: Options): Rule['amount'] | null | undefined {
  if (amount === false) return null;
  if ([each, whole, share].filter(given => given !== undefined).length > 1)
    throw new InvalidArgumentError('--each, --whole and --share are three ways to say how much: give one.');
  if (share !== undefined) return {share: Number(share)};
  if (whole !== undefined) {
    const {quantity, of} = foodWords(String(whole));
    return {whole: quantity, of};
  }
  if (each !== undefined) return {...eachWords(each as readonly string[]), ...(isPer(per) ? {per} : {})};
  if (per === undefined) return undefined;
  throw new InvalidArgumentError('--per says what --each is for: give both, --each "0.2 mg food" --per day.');
}

function isPer(word: unknown): word is 'day' | 'life' {
  if (word === undefined || word === 'time') return false;
  if (word === 'day' || word === 'life') return true;
  throw new InvalidArgumentError(`--per is time, day or life, not "${word}".`);
}

/** "1 prey" for every animal, or "larva-1=5.5 aphids" "larva-4=46 aphids" by stage. */
function eachWords(words: readonly string[]) {
  const foods = words.map(word => {
    const [, stage, food = ''] = /^(?:([a-z]+(?:-\d+)?)=)?(.*)$/.exec(word.trim()) ?? [];
    return {stage, ...foodWords(food)};
  });
  const [{of, quantity, stage}] = foods as [(typeof foods)[0]];
  if (foods.some(food => food.of !== of))
    throw new InvalidArgumentError('a rule gives one food in one unit: write the same behind each number.');
  if (foods.length === 1 && stage === undefined) return {each: quantity, of};
  const other = foods.find(({stage}) => stage !== undefined && !/^(larva|nymph)(-[1-9]\d?)?$/.test(stage));
  if (other !== undefined)
    throw new InvalidArgumentError(
      `"${other.stage}" is no stage that eats: larva, larva-4, nymph or nymph-2.`,
    );
  if (foods.some(food => food.stage === undefined))
    throw new InvalidArgumentError(
      'give one number for all animals, or one for each stage: larva-4="46 aphids".',
    );
  return {each: Object.fromEntries(foods.map(food => [food.stage!, food.quantity])), of};
}

function foodWords(word: string): {quantity: number; of: string} {
  const [, number, of] = /^([\d.,]+)\s*([^\d\s.,].*)$/.exec(word.trim()) ?? [];
  if (number === undefined || of === undefined)
    throw new InvalidArgumentError(`"${word}" is not written like "0.2 mg food" or "3 aphids".`);
  return {quantity: numberWord(number.replace(',', '.')), of};
}
