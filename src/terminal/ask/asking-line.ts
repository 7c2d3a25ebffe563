// The line on which a question waits for its answer.
import type {Observation} from '../../care/observations.ts';
import type {Glyphs} from '../../exchange/pictures/glyphs.ts';
import {type Line, type Piece, piece} from '../../exchange/pictures/line.ts';
import {type Asking, answerWords, choicesOf, waiting} from './asking.ts';

export function askingLine(asking: Asking, glyphs: Glyphs): Line {
  if (asking.kind === 'text')
    return [piece(` ${asking.label}: `, 'heading'), piece(`${asking.text}_`, 'seen')];
  if (asking.kind === 'choice')
    return [piece(` ${asking.question}  `, 'heading'), ...choicePieces(asking.choices)];
  const now = waiting(asking);
  if (now === undefined) return [];
  const given = asking.answers[asking.groups.indexOf(now.group)]!.map(
    (answer, i) => `${now.group.questions[i]!.label} ${answerWords(answer)} ${glyphs.dot} `,
  );
  const said = choicesOf(now.question).length > 0 ? '' : asking.typed;
  return [
    piece(` ${now.group.title} ${glyphs.dot} `, 'heading'),
    ...given.map(words => piece(words, 'good')),
    piece(now.question.question),
    ...(said === '' ? [] : [piece(` ${said}`, 'seen')]),
  ];
}

/** "food left?  n none  s some  m much" */
export function questionPieces(question: Observation, typed: string): Piece[] {
  const {answer} = question;
  const choices = choicesOf(question);
  const unit = answer.kind === 'number' && answer.unit !== '' ? ` ${answer.unit}` : '';
  return [
    piece(`${question.label}?  `, 'seen'),
    ...choicePieces(choices),
    ...(choices.length > 0 ? [] : [piece(`${typed}_`, 'seen'), piece(unit)]),
  ];
}

function choicePieces(choices: readonly {readonly key: string; readonly word: string}[]): Piece[] {
  return choices.flatMap(({key, word}) => [piece(key, 'seen'), piece(` ${word}  `)]);
}
