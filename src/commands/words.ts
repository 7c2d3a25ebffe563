// From the words of a command line to the values of records. A word that is none is wrong usage.
import {InvalidArgumentError} from 'commander';

/** A number, negative ones too. */
export function numberWord(word: string): number {
  const number = Number(word);
  if (word.trim() === '' || !Number.isFinite(number))
    throw new InvalidArgumentError(`"${word}" is no number.`);
  return number;
}

/** "larva-5=15 pupa=8" as counts by stage; "larva-5" alone is one animal. */
export function stageWords(words: readonly string[]): Record<string, number> {
  const counts: Record<string, number> = {};
  for (const word of words) {
    const [stage = '', count = '1', ...rest] = word.split('=');
    if (stage === '' || rest.length > 0)
      throw new InvalidArgumentError(`"${word}" is not written stage=number.`);
    counts[stage] = (counts[stage] ?? 0) + numberWord(count);
  }
  return counts;
}

/** "pieris-rapae=0.7 lepidoptera=0.3" as candidates with weights; a name alone weighs 1. */
export function candidateWords(words: readonly string[]): {profile: string; weight: number}[] {
  return words.map(word => {
    const [profile = '', weight = '1'] = word.split('=');
    return {profile, weight: numberWord(weight)};
  });
}

/** Collects an option that may be given several times. */
export function collect(word: string, earlier: readonly string[] = []): string[] {
  return [...earlier, word];
}

/** Yes, no, a number, else the word itself: what a person answers. */
export function answerWord(word: string): boolean | number | string {
  if (/^(yes|y|true)$/i.test(word)) return true;
  if (/^(no|n|false)$/i.test(word)) return false;
  return word.trim() !== '' && Number.isFinite(Number(word)) ? Number(word) : word;
}

const DURATION = /^([+-]?)(\d+(?:\.\d+)?)(s|m|min|h|d)$/;
const UNIT_MS = {s: 1000, m: 60_000, min: 60_000, h: 3_600_000, d: 86_400_000} as const;

/** "+7m", "-90s", "1h" as milliseconds. */
export function durationWord(word: string): number {
  const [, sign, size, unit] = DURATION.exec(word.trim().toLowerCase()) ?? [];
  if (size === undefined) throw new InvalidArgumentError(`"${word}" is not written like +7m, -90s or 1h.`);
  return (sign === '-' ? -1 : 1) * Number(size) * UNIT_MS[unit as keyof typeof UNIT_MS];
}
