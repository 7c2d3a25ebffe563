// The answers a person gives when a task is done: read from `key=value`, and looked through for what is missing.
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import {type AnswerKind, knownKeys, type Observation, observationOf} from './observations.ts';

export type Answer = boolean | number | string;
export type Answers = Readonly<Record<string, Answer>>;

const YES = ['yes', 'y', 'true'];
const NO = ['no', 'n', 'false'];

/**
 * Read what was written as `key=value`.
 * @param asked keys that the tasks in question ask for; others must be ones the program knows
 * @throws Refusal where a pair cannot be read, or its key is neither asked nor known
 */
export function readAnswers(pairs: readonly string[], asked: Iterable<string> = []): Answers {
  const allowed = new Set([...asked, ...knownKeys]);
  const answers: Record<string, Answer> = {};
  for (const pair of pairs) {
    const equals = pair.indexOf('=');
    if (equals < 1)
      throw new Refusal(
        'an answer is written key=value',
        `--seen ${pair}`,
        'Write for example --seen mould=no.',
      );
    const key = pair.slice(0, equals).trim();
    if (!allowed.has(key)) throw unknownKey(key, allowed, pair);
    answers[key] = readAnswer(observationOf(key), pair.slice(equals + 1).trim());
  }
  return answers;
}

/** Read one answer. @throws Refusal saying what may be answered */
export function readAnswer(observation: Observation, text: string): Answer {
  const answer = text === '' ? undefined : understood(observation.answer, text);
  if (answer !== undefined) return answer;
  const {key, question} = observation;
  throw new Refusal(
    text === '' ? `"${key}" is not answered` : `"${text}" is no answer to "${question}"`,
    `--seen ${key}=${text}`,
    `Answer ${possibleAnswers(observation.answer)}.`,
  );
}

/** Those of the asked keys that have no answer. */
export function missingAnswers(asked: readonly string[], answers: Answers): readonly string[] {
  return asked.filter(key => answers[key] === undefined);
}

/** What may be answered, in a few words: "yes or no", "none, some or much". */
export function possibleAnswers(kind: AnswerKind): string {
  switch (kind.kind) {
    case 'yes-no':
      return 'yes or no';
    case 'word': {
      const words = kind.words.map(({word}) => word);
      return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
    }
    case 'number': {
      const unit = kind.unit === '' ? '' : ` ${kind.unit}`;
      return `a ${kind.whole ? 'whole ' : ''}number from ${kind.min} to ${kind.max}${unit}`;
    }
    case 'share':
      return 'a part from 0 to 1, such as 0.3, 30% or 1/3';
    case 'free':
      return 'yes, no, a number, or words';
  }
}

/** How a missing answer is asked for: `--seen foodLeft=none|some|much`. */
export function seenOption(key: string): string {
  const {answer} = observationOf(key);
  switch (answer.kind) {
    case 'yes-no':
      return `--seen ${key}=yes|no`;
    case 'word':
      return `--seen ${key}=${answer.words.map(({word}) => word).join('|')}`;
    case 'number':
    case 'share':
      return `--seen ${key}=NUMBER`;
    case 'free':
      return `--seen ${key}=ANSWER`;
  }
}

function understood(kind: AnswerKind, text: string): Answer | undefined {
  const lower = text.toLowerCase();
  switch (kind.kind) {
    case 'yes-no':
      return yesOrNo(lower);
    case 'word':
      return kind.words.find(({key, word}) => lower === word || lower === key)?.word;
    case 'number': {
      const number = numberIn(text);
      if (number === undefined || number < kind.min || number > kind.max) return undefined;
      return kind.whole && !Number.isInteger(number) ? undefined : number;
    }
    case 'share': {
      const share = shareIn(text);
      return share === undefined || share < 0 || share > 1 ? undefined : share;
    }
    case 'free':
      return yesOrNo(lower) ?? numberIn(text) ?? text;
  }
}

function yesOrNo(lower: string): boolean | undefined {
  return YES.includes(lower) ? true : NO.includes(lower) ? false : undefined;
}

function numberIn(text: string): number | undefined {
  return /^[+-]?\d+(\.\d+)?$/.test(text) ? Number(text) : undefined;
}

function shareIn(text: string): number | undefined {
  const [, above, below] = /^(\d+)\/(\d+)$/.exec(text) ?? [];
  if (above !== undefined && below !== undefined)
    return Number(below) > 0 ? Number(above) / Number(below) : undefined;
  const percent = text.endsWith('%') ? numberIn(text.slice(0, -1)) : undefined;
  return percent === undefined ? numberIn(text) : percent / 100;
}

function unknownKey(key: string, allowed: ReadonlySet<string>, pair: string): Refusal {
  const close = nearest(key, allowed);
  const hint = close === undefined ? `Known are ${[...allowed].join(', ')}.` : `Did you mean ${close}?`;
  return new Refusal(`nobody asks for "${key}"`, `--seen ${pair}`, hint);
}
