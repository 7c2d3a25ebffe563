// The threads, drawn: every open lot as one line along the days.
import {fill, wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {thread} from '../../exchange/pictures/thread.ts';
import {threadAxis} from '../../exchange/pictures/thread-axis.ts';
import {MS_PER_DAY} from '../../records/entry.ts';
import type {Outlook} from '../../work/outlook.ts';
import {aliveWords, candidateWords, endWords, shortDay, statusWords, windowWords} from '../forecast-words.ts';
import {headOf} from '../head.ts';
import {firstShown} from '../layout.ts';
import {firstLines} from '../round/first-lines.ts';
import type {Page, Room, SheetOf, View} from '../sheet.ts';
import {chanceWords} from '../when-words.ts';
import {dayColumns, FIRST_CELLS, LABEL_CELLS} from './columns.ts';
import {lotsShown} from './lots-shown.ts';
import {threadOf} from './thread-of.ts';

export function drawThreads(sheet: SheetOf<'threads'>, view: View, room: Room): Page {
  const {desk} = view.facts;
  const aside = `1 column = ${sheet.daysPerColumn === 1 ? '1 day' : `${sheet.daysPerColumn} days`}`;
  const lots = lotsShown(view);
  const frame = {head: `${headOf(view)} ${view.glyphs.dot} ${lots.length} lots`, aside};
  const {outlooks} = view;
  if (lots.length === 0) return {...frame, body: firstLines(view), detail: []};
  if (outlooks.failed !== undefined)
    return {...frame, body: [[], line(` ${outlooks.failed.message}`, 'late')], detail: []};

  const cells = room.columns - LABEL_CELLS - FIRST_CELLS;
  const columns = dayColumns(view, cells, sheet.daysPerColumn, sheet.shift);
  const index = Math.max(
    0,
    lots.findIndex(({code}) => code === sheet.cursor),
  );
  const {byLot} = outlooks;
  const shown = firstShown(index, lots.length, room.body - 2);
  const axis: Line = view.plain
    ? []
    : [
        piece(' '.repeat(LABEL_CELLS)),
        ...threadAxis(columns, desk.now / MS_PER_DAY, desk.civil, view.glyphs),
        piece(' first', 'expected'),
      ];
  const rows = lots.slice(shown, shown + room.body - 2).flatMap((lot, i) => {
    const known = byLot.get(lot.code);
    const here = shown + i === index;
    const {cursor, more} = view.glyphs;
    const unit = lot.stays.at(-1)?.unit ?? '';
    const label = piece(
      ` ${here ? cursor : ' '}${fill(lot.code, 9, more)} ${fill(unit, 3, more)} `,
      here ? 'cursor' : 'plain',
    );
    if (known === undefined) return [[label, piece('is being computed …', 'expected')]];
    if ('failed' in known) return [[label, piece(known.failed.what, 'late')]];
    const picture = thread(threadOf(known, columns, desk.now), view.glyphs);
    const end = piece(` ${endWords(known.outlook, desk.civil, desk.now)}`);
    const main: Line = [label, ...(view.plain ? [] : picture.line), end];
    const below: Line[] =
      here && picture.below !== undefined && !view.plain
        ? [[piece(' '.repeat(LABEL_CELLS)), ...picture.below]]
        : [];
    return [main, ...below];
  });
  const under = byLot.get(lots[index]!.code);
  const detail =
    under === undefined
      ? []
      : 'failed' in under
        ? [line(` ${under.failed.message}`, 'late')]
        : detailOf(under.outlook, view, room);
  return {...frame, body: [axis, ...rows], detail};
}

function detailOf(outlook: Outlook, view: View, room: Room): Line[] {
  const {civil, now} = view.facts.desk;
  const {lot, forecast} = outlook;
  const {dot} = view.glyphs;
  const first = forecast.first ?? forecast.animal;
  const [help] = forecast.assumptions;
  return [
    line(
      ` ${lot.code} ${dot} ${aliveWords(outlook)} ${dot} ${lot.taxon ?? candidateWords(outlook)}`,
      'heading',
    ),
    line(` ${statusWords(outlook)}${lot.taxon === undefined ? '' : ` ${dot} ${candidateWords(outlook)}`}`),
    line(
      ` ${forecast.first === null ? 'one animal' : 'first'}  ${windowWords(first, civil, now)}` +
        (forecast.half === null ? '' : `   half  ${windowWords(forecast.half, civil, now)}`),
    ),
    line(
      ` look from  ${shortDay(forecast.startCheckingDays, civil, now)}   next  ${shortDay(forecast.nextCheckDays, civil, now)}` +
        (forecast.pace === null ? '' : `   pace  ${forecast.pace.p50.toFixed(2)}`) +
        outAlready(forecast.stagesNow.adult),
    ),
    ...(help === undefined ? [] : wrap(help, room.columns - 2).map(text => line(` ${text}`, 'expected'))),
  ];
}

/** What is likely out already, unseen. */
function outAlready(chance = 0): string {
  return chance < 0.005 ? '' : `   out already  ${chanceWords(chance)} (${chance.toFixed(2)})`;
}
