// Keys while a question waits: one key an answer; a number is typed and kept with enter; delete takes the last one back.
import {type Answer, possibleAnswers, readAnswer} from '../../care/answers.ts';
import {Refusal} from '../../records/refusal.ts';
import type {Stroke} from '../strokes.ts';
import {isCharacter} from '../strokes.ts';
import {type AskingAnswers, type AskingText, choicesOf, waiting} from './asking.ts';

export type Answered<Kind> =
  | {readonly kind: 'asking'; readonly asking: Kind; readonly say?: string}
  | {readonly kind: 'done'; readonly asking: Kind}
  | {readonly kind: 'given-up'};

/** A text being typed. */
export function typeText(asking: AskingText, stroke: Stroke): Answered<AskingText> {
  const {text} = asking;
  if (stroke === 'escape') return {kind: 'given-up'};
  if (stroke === 'enter')
    return text.trim() === ''
      ? {kind: 'asking', asking, say: 'Type a text and press enter, or escape to leave it.'}
      : {kind: 'done', asking: {...asking, text: text.trim()}};
  return {kind: 'asking', asking: {...asking, text: typed(text, stroke)}};
}

/** An answer being given. */
export function giveAnswer(asking: AskingAnswers, stroke: Stroke): Answered<AskingAnswers> {
  if (stroke === 'escape') return {kind: 'given-up'};
  const now = waiting(asking);
  if (now === undefined) return {kind: 'done', asking};
  if (stroke === 'delete' && asking.typed === '') return takeBack(asking);
  const choices = choicesOf(now.question);
  if (choices.length > 0) {
    const choice = choices.find(({key}) => key === stroke.toLowerCase());
    return choice === undefined ? again(asking, now.question) : read(asking, choice.word);
  }
  const ends = stroke === 'enter' || (stroke === ' ' && now.question.answer.kind !== 'free');
  return ends
    ? read(asking, asking.typed.trim())
    : {kind: 'asking', asking: {...asking, typed: typed(asking.typed, stroke)}};
}

function read(asking: AskingAnswers, text: string): Answered<AskingAnswers> {
  const {question} = waiting(asking)!;
  try {
    return given(asking, readAnswer(question, text.replace(',', '.')));
  } catch (error) {
    if (error instanceof Refusal) return again(asking, question);
    throw error;
  }
}

function again(
  asking: AskingAnswers,
  question: NonNullable<ReturnType<typeof waiting>>['question'],
): Answered<AskingAnswers> {
  const keys = choicesOf(question).map(({key, word}) => `${key} for ${word}`);
  const answers = keys.length > 0 ? keys.join(', ') : possibleAnswers(question.answer);
  return {kind: 'asking', asking: {...asking, typed: ''}, say: `Answer ${answers}; escape leaves it.`};
}

function given(asking: AskingAnswers, answer: Answer): Answered<AskingAnswers> {
  const group = asking.groups.findIndex(({questions}, i) => asking.answers[i]!.length < questions.length);
  const answers = asking.answers.map((soFar, i) => (i === group ? [...soFar, answer] : soFar));
  const next: AskingAnswers = {...asking, answers, typed: ''};
  return waiting(next) === undefined ? {kind: 'done', asking: next} : {kind: 'asking', asking: next};
}

function takeBack(asking: AskingAnswers): Answered<AskingAnswers> {
  const group = asking.answers.findLastIndex(answers => answers.length > 0);
  const answers = asking.answers.map((soFar, i) => (i === group ? soFar.slice(0, -1) : soFar));
  return {kind: 'asking', asking: {...asking, answers}};
}

/** The text after a key: a character more, or one less. */
export function typed(text: string, stroke: Stroke): string {
  if (stroke === 'delete') return [...text].slice(0, -1).join('');
  return isCharacter(stroke) ? text + stroke : text;
}
