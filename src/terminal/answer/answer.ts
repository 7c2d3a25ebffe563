// An answer in words: a title, and lines with names in the margin.
import {wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import type {Question} from '../../work/said-answer.ts';
import type {SaidLine} from '../../work/said-lines.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, View} from '../sheet.ts';

type Answer = SheetOf<'answer'>;

const MARGIN = 16;

export const answer: SheetPart<Answer> = {
  title: 'an answer',
  keys: scrollKeys<Answer>(),
  draw: drawAnswer,
  needs({of}, {answers}) {
    const key = keyOf(of);
    return answers.has(key) ? [] : [{do: 'answer', key, question: of}];
  },
};

function keyOf(question: Question): string {
  return JSON.stringify(question);
}

function drawAnswer({of, scroll}: Answer, view: View, room: Room): Page {
  const loaded = view.answers.get(keyOf(of));
  if (loaded === undefined)
    return {head: headOf(of), aside: '', body: [line(' It is being worked out …', 'expected')]};
  if ('failed' in loaded)
    return {
      head: headOf(of),
      aside: '',
      body: wrap(loaded.failed.message, room.columns - 2).map(words => line(` ${words}`, 'late')),
    };
  const {title, lines} = loaded.value;
  const all = lines.flatMap(said => drawn(said, room.columns));
  return {
    head: title,
    aside: whereScrolled(all.length, scroll, room.body + room.detail),
    body: scrolled(all, scroll, room.body + room.detail),
  };
}

function headOf(question: Question): string {
  return question.ask === 'review' ? 'looking back' : question.lot;
}

/** A name in the margin, its text wrapped beside it; one without either is a blank line. */
function drawn([name, text]: SaidLine, columns: number): Line[] {
  if (name === '' && text === '') return [[]];
  return wrap(text, columns - MARGIN - 2).map((words, i) => [
    piece(` ${(i === 0 ? name : '').padEnd(MARGIN - 1)}`, 'heading'),
    piece(words),
  ]);
}
