// Questions put to the person on the line: a text, the answers that a task forces, or a choice.
import type {Answer} from '../../care/answers.ts';
import type {Observation} from '../../care/observations.ts';
import type {Rule} from '../../records/state.ts';
import type {LabelSubject} from '../out/out-keys.ts';

/** Fields of sheets that ask for a text. */
export type FieldName =
  | 'animal'
  | 'name'
  | 'code'
  | 'when'
  | 'condition'
  | 'exuviae'
  | 'parasitoids'
  | 'clues'
  | 'profile'
  | 'fit table'
  | 'fit lots'
  | 'fit profile'
  | 'fit name'
  | 'fit stage'
  | 'fit source';

/** What a text that was typed is for. */
export type Purpose =
  | {readonly for: 'skip'; readonly ids: readonly string[]}
  | {readonly for: 'acknowledge'; readonly alert: string}
  | {readonly for: 'note'; readonly about: string}
  | {readonly for: 'reading'; readonly logger: string}
  | {readonly for: 'import'; readonly logger: string}
  | {readonly for: 'offset'; readonly unit: string}
  /** A span of readings that is not to be trusted, or (`lift`) is. */
  | {
      readonly for: 'mask';
      readonly logger: string;
      readonly from: string;
      readonly to: string;
      readonly lift: boolean;
    }
  | {readonly for: 'labels'; readonly of: LabelSubject; readonly code: string}
  | {readonly for: 'export'}
  | {readonly for: 'interval'; readonly rule: Rule}
  | {readonly for: 'amount'; readonly rule: Rule}
  | {readonly for: 'hold'; readonly lot: string}
  | {readonly for: 'plan'; readonly lot: string}
  | {readonly for: 'field'; readonly field: FieldName};

export interface AskingText {
  readonly kind: 'text';
  readonly label: string;
  readonly text: string;
  readonly purpose: Purpose;
}

/** Tasks that are asked the same questions together. */
export interface AskedGroup {
  /** In words: "feed, 3 together". */
  readonly title: string;
  readonly ids: readonly string[];
  readonly questions: readonly Observation[];
}

export interface AskingAnswers {
  readonly kind: 'answers';
  readonly groups: readonly AskedGroup[];
  /** Given so far, group by group, in the order of the questions. Nothing is preset. */
  readonly answers: readonly (readonly Answer[])[];
  /** A number or word being typed. */
  readonly typed: string;
}

/** A question that the sheet on top puts, with one key an answer. */
export interface AskingChoice {
  readonly kind: 'choice';
  readonly question: string;
  readonly choices: readonly {readonly key: string; readonly word: string}[];
}

export type Asking = AskingText | AskingAnswers | AskingChoice;

/** The question that waits; undefined when all are answered. */
export function waiting({
  groups,
  answers,
}: AskingAnswers): {readonly group: AskedGroup; readonly question: Observation} | undefined {
  for (const [i, group] of groups.entries()) {
    const question = group.questions[answers[i]?.length ?? 0];
    if (question !== undefined) return {group, question};
  }
  return undefined;
}

/** Every answer by what was asked. */
export function seenOf({questions}: AskedGroup, answers: readonly Answer[]): Record<string, Answer> {
  return Object.fromEntries(questions.map(({key}, i) => [key, answers[i]!]));
}

/** Answers that one key gives; none where something must be typed. */
export function choicesOf({answer}: Observation): readonly {readonly key: string; readonly word: string}[] {
  if (answer.kind === 'word') return answer.words;
  if (answer.kind === 'yes-no')
    return [
      {key: 'n', word: 'no'},
      {key: 'y', word: 'yes'},
    ];
  return [];
}

/** How an answer is said back. */
export function answerWords(answer: Answer): string {
  if (answer === true) return 'yes';
  if (answer === false) return 'no';
  return String(answer);
}
