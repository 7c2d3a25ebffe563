// A lot, drawn: thread, stages, emergence, course, balance, daybook, chain.
import {emergenceCurve} from '../../exchange/pictures/emergence-curve.ts';
import {wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {stageBar} from '../../exchange/pictures/stage-bar.ts';
import {thread} from '../../exchange/pictures/thread.ts';
import {threadAxis} from '../../exchange/pictures/thread-axis.ts';
import {tree} from '../../exchange/pictures/tree.ts';
import {balanceInWords, exactness, lostInWords} from '../../records/balance.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import {outcomeOf} from '../../records/outcome.ts';
import {needsInWords} from '../../records/plain-words.ts';
import type {Lot} from '../../records/state.ts';
import {lineOf} from '../../work/daybook.ts';
import {warmthWords} from '../../work/forecast-said.ts';
import {outcomeSections} from '../../work/outcome-text.ts';
import type {Outlook} from '../../work/outlook.ts';
import {overdueLines, pastWords} from '../../work/rest-words.ts';
import type {SaidLine} from '../../work/said-lines.ts';
import {waterWords} from '../../work/water-words.ts';
import {aliveWords, candidateWords, shortDay, statusWords, windowWords} from '../forecast-words.ts';
import {scrolled, whereScrolled} from '../scroll.ts';
import type {LotOutlook, Page, Room, SheetOf, View} from '../sheet.ts';
import {dayColumns} from '../threads/columns.ts';
import {cameOut, threadOf} from '../threads/thread-of.ts';
import {courseLines} from '../unit/course-picture.ts';
import {courseEffect, stretchOf} from '../unit/span.ts';
import {deskWith} from '../whole-desk.ts';

const CURVE_ROWS = 9;
const COURSE_ROWS = 14;
const MARGIN = 11;

export function drawLot(sheet: SheetOf<'lot'>, view: View, room: Room): Page {
  const desk = deskWith(sheet.code, view);
  const lot = desk.state.lots.get(sheet.code);
  if (lot === undefined)
    return {head: sheet.code, aside: '', body: [line(` There is no lot ${sheet.code} here.`)], detail: []};
  const known = view.outlooks.byLot.get(lot.code);
  const outlook = known !== undefined && 'outlook' in known ? known.outlook : undefined;
  const all = [
    ...(known === undefined || 'failed' in known
      ? notYet(lot, known, view)
      : forecastLines(known, view, room)),
    ...notOutSection(outlook, view, room),
    ...courseSection(lot, view, room),
    ...section(
      'needs, as kept with it',
      lot.needs === undefined ? [] : [line(` ${needsInWords(lot.needs)}`)],
    ),
    ...section(
      'balance',
      wrap(`${balanceInWords(lot)}${lostInWords(lot)}${exactness(lot)}`, room.columns - 2).map(words =>
        line(` ${words}`),
      ),
    ),
    ...outcomeSections(lot, outcomeOf(lot, desk.state, desk.civil), desk).flatMap(({title, lines}) =>
      section(
        title,
        lines.map(text => line(` ${text}`)),
      ),
    ),
    ...section(
      'daybook',
      [...lot.entries].reverse().map(entry => line(` ${lineOf(entry, view.facts.desk)}`)),
    ),
    ...section('comes from', chain(lot, view, room)),
  ];
  const {dot} = view.glyphs;
  return {
    head: `${lot.code} ${dot} ${lot.taxon ?? 'not yet identified'} ${dot} ${lot.stays.at(-1)?.unit ?? ''}`,
    aside: whereScrolled(all.length, sheet.scroll, room.body),
    body: scrolled(all, sheet.scroll, room.body),
    detail: outlook === undefined ? [] : summary(outlook, view, room),
  };
}

function section(title: string, lines: readonly Line[]): Line[] {
  return lines.length === 0 ? [] : [[], line(` ${title}`, 'heading'), ...lines];
}

function notYet(lot: Lot, known: LotOutlook | undefined, view: View): Line[] {
  if (lot.closed !== undefined) return [line(` Closed: ${lot.closed.reason ?? 'without a reason given'}.`)];
  const failed = known !== undefined && 'failed' in known ? known.failed : view.outlooks.failed;
  if (failed !== undefined) return [line(` ${failed.message}`, 'late')];
  return [line(' The forecast is being computed …', 'expected')];
}

function forecastLines(
  known: Extract<LotOutlook, {readonly outlook: unknown}>,
  view: View,
  room: Room,
): Line[] {
  const {civil, now} = view.facts.desk;
  const {forecast, lot} = known.outlook;
  const columns = dayColumns(view, room.columns - 3, 1, 0);
  const picture = thread(threadOf(known, columns, now), view.glyphs);
  const lead = piece(' ');
  const drawn = view.plain
    ? []
    : [
        [lead, ...threadAxis(columns, now / MS_PER_DAY, civil, view.glyphs)],
        [lead, ...picture.line],
        ...(picture.below === undefined ? [] : [[lead, ...picture.below]]),
        [],
      ];
  const counted = Object.keys(forecast.stagesNow).length > 0;
  const curve = view.plain
    ? []
    : emergenceCurve(
        {
          perDay: forecast.perDay,
          animal: forecast.animal,
          came: cameOut(lot),
          nowDays: now / MS_PER_DAY,
          civil,
        },
        {columns: room.columns - 1, rows: CURVE_ROWS},
        view.glyphs,
      );
  return [
    ...drawn,
    ...(counted ? [[piece(' now  '), ...stageBar(forecast.stagesNow, Math.min(30, room.columns - 50))]] : []),
    ...section('emergence of one animal, taken at random', curve),
  ];
}

/** Of a lot that is late: what those left may be and why, how to tell, and what to do. */
function notOutSection(outlook: Outlook | undefined, {facts: {desk}}: View, room: Room): Line[] {
  if (outlook === undefined || outlook.overdue === null) return [];
  const past = pastWords(outlook, desk);
  const said: readonly SaidLine[] = [
    ...(past === undefined ? [] : [['left', past] as const]),
    ...overdueLines(outlook, desk),
  ];
  const lines = said.flatMap(([name, text]) =>
    wrap(text, room.columns - MARGIN - 2).map((words, i) =>
      line(` ${(i === 0 ? name : '').padEnd(MARGIN)}${words}`),
    ),
  );
  return section('not out in time', lines);
}

function courseSection(lot: Lot, view: View, room: Room): Line[] {
  const {civil, now} = view.facts.desk;
  const unit = lot.stays.at(-1)?.unit;
  if (unit === undefined || lot.closed !== undefined) return [];
  const stretch = stretchOf('week', 0, civil, now);
  const course = view.courses.get(courseEffect(unit, stretch).key);
  return section(
    `temperature in ${unit}`,
    courseLines(course, stretch, view, {columns: room.columns - 1, rows: COURSE_ROWS}),
  );
}

function chain(lot: Lot, view: View, room: Room): readonly Line[] {
  const loaded = view.trees.get(`up ${lot.code}`);
  if (loaded === undefined) return [line(' is being looked up …', 'expected')];
  if ('failed' in loaded) return [line(` ${loaded.failed.message}`, 'late')];
  return tree(loaded.value, view.glyphs, room.columns - 2).map(one => [piece(' '), ...one]);
}

function waterSaid(outlook: Outlook, {facts}: View): string | undefined {
  const words = waterWords(outlook, facts.desk);
  return words === undefined ? undefined : `the water is ${words}`;
}

function summary(outlook: Outlook, view: View, room: Room): Line[] {
  const {civil, now} = view.facts.desk;
  const {forecast, readings} = outlook;
  const {dot} = view.glyphs;
  const times = [
    ...(forecast.first === null ? [] : [`first ${windowWords(forecast.first, civil, now)}`]),
    ...(forecast.half === null ? [] : [`half ${windowWords(forecast.half, civil, now)}`]),
    ...(forecast.first === null ? [`one animal ${windowWords(forecast.animal, civil, now)}`] : []),
  ];
  return [
    line(` ${aliveWords(outlook)} ${dot} ${statusWords(outlook)}`, 'heading'),
    line(` ${times.join('   ')}`),
    line(
      ` look from ${shortDay(forecast.startCheckingDays, civil, now)}   next ${shortDay(forecast.nextCheckDays, civil, now)}   may be ${candidateWords(outlook)}`,
    ),
    line(` readings cover ${Math.round(readings.coverage * 100)} % of its life`, 'expected'),
    ...[warmthWords(outlook), waterSaid(outlook, view)]
      .flatMap(text => (text === undefined ? [] : wrap(text, room.columns - 2)))
      .map(text => line(` ${text}`, 'expected')),
    ...forecast.assumptions
      .flatMap(text => wrap(text, room.columns - 2))
      .map(text => line(` ${text}`, 'expected')),
  ];
}
