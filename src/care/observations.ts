// What may be asked when a task is done, and what must be.

/** What an answer may be. A word has a key of its own, so that one key answers. */
export type AnswerKind =
  | {readonly kind: 'yes-no'}
  | {readonly kind: 'word'; readonly words: readonly {readonly key: string; readonly word: string}[]}
  | {
      readonly kind: 'number';
      readonly unit: string;
      readonly min: number;
      readonly max: number;
      readonly whole: boolean;
    }
  /** A part of a whole, from 0 to 1; written 0.3, 30% or 1/3. */
  | {readonly kind: 'share'}
  /** A question of the room's own: yes, no, a number, or words. */
  | {readonly kind: 'free'};

export interface Observation {
  /** As in `--seen key=value` and in the daybook. */
  readonly key: string;
  /** In a word or two, as a label on a line. */
  readonly label: string;
  readonly question: string;
  readonly answer: AnswerKind;
}

const yesNo: AnswerKind = {kind: 'yes-no'};
const animals: AnswerKind = {kind: 'number', unit: '', min: 0, max: 1_000_000, whole: true};

const known: readonly Observation[] = [
  {
    key: 'foodLeft',
    label: 'food left',
    question: 'How much food was left?',
    answer: {
      kind: 'word',
      words: [
        {key: 'n', word: 'none'},
        {key: 's', word: 'some'},
        {key: 'm', word: 'much'},
      ],
    },
  },
  {key: 'mould', label: 'mould', question: 'Is there mould?', answer: yesNo},
  {key: 'alive', label: 'alive', question: 'How many are alive, roughly?', answer: animals},
  {key: 'dead', label: 'dead', question: 'How many dead were there?', answer: animals},
  {key: 'frass', label: 'frass', question: 'Was there frass?', answer: yesNo},
  {key: 'escapes', label: 'escapes', question: 'Had any escaped?', answer: yesNo},
  {key: 'adults', label: 'adults', question: 'How many adults are out? 0 is an answer.', answer: animals},
  {
    key: 'deadUnseen',
    label: 'dead unseen',
    question: 'How many adults died before anybody saw them?',
    answer: animals,
  },
  {key: 'moved', label: 'pupae moved', question: 'How many pupae were moved?', answer: animals},
  {
    key: 'waterC',
    label: 'water °C',
    question: 'How warm is the water?',
    answer: {kind: 'number', unit: '°C', min: -2, max: 50, whole: false},
  },
  {
    key: 'scum',
    label: 'smell or scum',
    question: 'Does the water smell, or is there scum on it?',
    answer: yesNo,
  },
  {
    key: 'fraction',
    label: 'part changed',
    question: 'How much of the water was changed?',
    answer: {kind: 'share'},
  },
  {key: 'bubbles', label: 'bubbles', question: 'Are there bubbles?', answer: yesNo},
  {
    key: 'foodStock',
    label: 'food in stock',
    question: 'How much of its food is in stock?',
    answer: {
      kind: 'word',
      words: [
        {key: 'n', word: 'none'},
        {key: 'l', word: 'low'},
        {key: 'e', word: 'enough'},
      ],
    },
  },
  {
    key: 'coldC',
    label: '°C now',
    question: 'How cold is it in there now?',
    answer: {kind: 'number', unit: '°C', min: -30, max: 50, whole: false},
  },
  {key: 'condensation', label: 'condensation', question: 'Is there condensation?', answer: yesNo},
];

const byKey = new Map(known.map(observation => [observation.key, observation]));

/** The question of a key; a key of the room's own asks by its name. */
export function observationOf(key: string): Observation {
  return byKey.get(key) ?? {key, label: key, question: `${key}?`, answer: {kind: 'free'}};
}

/** The keys the program has words for. */
export const knownKeys: readonly string[] = known.map(({key}) => key);

/**
 * What must be answered when a task is done; a bare tick says nothing about the animals. Common practice, no source.
 * Rules that a room writes say themselves what is asked.
 */
export function forcedAnswers(task: string): readonly string[] {
  return forced[task] ?? [];
}

const forced: Readonly<Record<string, readonly string[]>> = {
  feed: ['foodLeft', 'mould', 'alive'],
  clean: ['dead', 'frass', 'escapes'],
  'change-water': ['waterC', 'scum', 'fraction'],
  'top-up': ['waterC', 'scum'],
  'check-air': ['bubbles'],
  look: ['adults', 'deadUnseen'],
  'move-pupae': ['moved'],
  inspect: ['mould'],
  'look-at-mould': ['mould'],
  'check-cold': ['mould', 'condensation', 'coldC'],
};
