// The round, drawn: tasks by place, the one under the cursor explained below.

import {observationOf} from '../../care/observations.ts';
import {withAmount} from '../../care/titles.ts';
import {fill, wrap} from '../../exchange/pictures/fit.ts';
import {type Kind, type Line, line, piece} from '../../exchange/pictures/line.ts';
import {leftWords} from '../../work/shortage-words.ts';
import {choicesOf, waiting} from '../ask/asking.ts';
import {questionPieces} from '../ask/asking-line.ts';
import {headOf} from '../head.ts';
import {firstShown} from '../layout.ts';
import type {Page, Room, SheetOf, View} from '../sheet.ts';
import {whenWords} from '../when-words.ts';
import {firstLines} from './first-lines.ts';
import {current, type RoundRow, roundRows} from './rows.ts';

export function drawRound(sheet: SheetOf<'round'>, view: View, room: Room): Page {
  const rows = roundRows(view);
  const here = current(rows, sheet.cursor);
  const index = rows.findIndex(row => row.kind !== 'place' && row.id === here?.id);
  const first = firstShown(index, rows.length, room.body);
  return {
    head: headOf(view),
    aside: countsOf(view),
    body:
      rows.length === 0
        ? firstLines(view)
        : rows
            .slice(first, first + room.body)
            .map((row, i) => rowLine(row, first + i === index, sheet, view, room)),
    detail: here === undefined ? [] : detailOf(here, view, room),
  };
}

function countsOf({facts: {today}}: View): string {
  const {toDo, late, done, minutes} = today.summary;
  const unfit = today.shortages.reduce((sum, {below}) => sum + below.length, 0);
  return [
    `${toDo} to do`,
    ...(late > 0 ? [`${late} late`] : []),
    ...(today.alerts.length > 0 ? [`${today.alerts.length} amiss`] : []),
    ...(unfit > 0 ? [`${unfit} below`] : []),
    ...(done > 0 ? [`${done} done`] : []),
    ...(minutes > 0 ? [`${Math.round(minutes)} min`] : []),
  ].join(', ');
}

function rowLine(row: RoundRow, here: boolean, sheet: SheetOf<'round'>, view: View, room: Room): Line {
  const {glyphs} = view;
  if (row.kind === 'place') return line(` ${row.text}`, 'heading');
  const cursor = here ? glyphs.cursor : ' ';
  const ticked = sheet.ticked.includes(row.id) ? glyphs.ticked : ' ';
  const base: Kind = here ? 'cursor' : 'plain';
  const lead = piece(` ${cursor}${ticked}`, base);
  const happened = view.lately.get(row.id);
  if (row.kind === 'alert')
    return [
      lead,
      piece(row.alert.what, 'late'),
      ...(happened === undefined ? [] : [piece(`  ${happened}`, 'good')]),
    ];
  const {task} = row;
  const unit = piece(`${fill(task.unit, 5, glyphs.more)} `, base);
  const {asking} = view;
  if (here && asking?.kind === 'answers') {
    const question = waiting(asking)?.question;
    if (question !== undefined) return [lead, unit, ...questionPieces(question, asking.typed)];
  }
  const titleWidth = Math.max(16, Math.min(60, room.columns - 52));
  const what = piece(
    `${fill(withAmount(task), titleWidth, glyphs.more)} ${fill(task.lot ?? '', 10, glyphs.more)} `,
    base,
  );
  if (happened !== undefined) return [lead, unit, what, piece(happened, 'good')];
  const {civil, now} = view.facts.desk;
  const kind: Kind = task.state === 'overdue' ? 'late' : base;
  const short = shortOf(task.id, view);
  const when = short === undefined ? whenWords(task, civil, now) : leftWords(short.below, view.facts.desk);
  return [lead, unit, what, piece(short === undefined ? when : `below: ${when}`, kind)];
}

/** The shortage below whose line a task falls; undefined where it fits. */
function shortOf(id: string, {facts: {today}}: View) {
  for (const shortage of today.shortages) {
    const below = shortage.below.find(each => each.id === id);
    if (below !== undefined) return {shortage, below};
  }
  return undefined;
}

function detailOf(row: Exclude<RoundRow, {kind: 'place'}>, view: View, room: Room): Line[] {
  const width = room.columns - 9;
  const entry = (name: string, text: string, kind: Kind = 'plain'): Line[] =>
    wrap(text, width).map((part, i) => [
      piece(` ${fill(i === 0 ? name : '', 6)} `, 'expected'),
      piece(part, kind),
    ]);
  if (row.kind === 'alert') {
    const {what, where, mend} = row.alert;
    return [line(` ${what}`, 'heading'), ...entry('where', where), ...entry('do', mend)];
  }
  const {task} = row;
  const short = shortOf(task.id, view);
  const answers = task.observe.map(observationOf).map(question => {
    const words = choicesOf(question).map(({word}) => word);
    return words.length > 0 ? `${question.label} ${words.join(' ')}` : question.label;
  });
  return [
    line(` ${withAmount(task)}, ${task.unit} at ${task.place}`, 'heading'),
    ...entry('why', task.why()),
    ...(short === undefined
      ? []
      : entry(
          'time',
          `${short.shortage.who} has ${short.shortage.minutes} of ${short.shortage.needed} minutes; this falls below the line, ${leftWords(short.below, view.facts.desk)}`,
        )),
    ...(answers.length > 0 ? entry('look', answers.join(` ${view.glyphs.dot} `)) : []),
    ...(task.caution === null ? [] : entry('care', task.caution)),
  ];
}
