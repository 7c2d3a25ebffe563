// The models of one table beside each other, and the curve of the one under the cursor.
import {fill, wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {rateCurve} from '../../exchange/pictures/rate-curve.ts';
import type {RateModelSpec} from '../../thermal/rate-model.ts';
import type {Compared} from '../../work/fit.ts';
import {pictureOf} from '../../work/fit-picture.ts';
import type {Fitting} from '../../work/fitting.ts';
import {landmarkWords} from '../../work/landmark-words.ts';
import type {FitSheet, Page, Room, View} from '../sheet.ts';
import {fittingOf, hasRows, keyOf} from './fit.ts';

const LIST_COLUMNS = 33;

export function drawFit(sheet: FitSheet, view: View, room: Room): Page {
  const found = view.fits.get(keyOf(sheet));
  const fitting = fittingOf(sheet, view);
  return {
    head: `days at temperatures${sheet.stage === undefined ? '' : `, ${sheet.stage}`}${sheet.profile === undefined ? '' : ` ${view.glyphs.dot} for ${sheet.profile}`}`,
    aside: fitting === undefined ? '' : `${fitting.rows.length} rows`,
    body:
      fitting !== undefined
        ? beside(modelLines(sheet, fitting, view), curveLines(sheet, fitting, view, room), room.body)
        : found !== undefined && 'failed' in found
          ? wrap(found.failed.message, room.columns - 2).map(text => line(` ${text}`, 'late'))
          : hasRows(sheet)
            ? [line(' Models are being fitted …', 'expected')]
            : firstWords(room.columns),
    detail: [rowsLine(sheet, fitting), ...belowLines(sheet, fitting, room.columns)],
  };
}

function firstWords(columns: number): Line[] {
  const text =
    'Type the days that a stage took at each temperature, °C first: 15=55.6, enter, 20=27.1, enter … o takes them from a table, l from lots of this room. Every rate model is then fitted, the best supported first.';
  return wrap(text, columns - 2).map(part => line(` ${part}`, 'expected'));
}

/** The model to keep as it is, then every one that was fitted. */
function modelLines({cursor}: FitSheet, {best, compared}: Fitting, {glyphs}: View): Line[] {
  const sign = (at: number) => (at === cursor ? glyphs.cursor : ' ');
  const celsius = (value: number | null) => (value === null ? '–' : value.toFixed(1)).padStart(6);
  return [
    line(`   ${'model'.padEnd(12)} from fastest to`, 'heading'),
    line(` ${sign(0)} ${`best: ${best.model.kind}`}`, cursor === 0 ? 'cursor' : 'plain'),
    ...compared.map(({model, lower, optimum, upper}, i) =>
      line(
        ` ${sign(i + 1)} ${model.kind.padEnd(11)}${celsius(lower)}${celsius(optimum)}${celsius(upper)}`,
        cursor === i + 1 ? 'cursor' : 'plain',
      ),
    ),
  ];
}

function chosen({cursor}: FitSheet, {best, compared}: Fitting): RateModelSpec {
  return compared[cursor - 1]?.model ?? best.model;
}

function curveLines(sheet: FitSheet, fitting: Fitting, view: View, room: Room): Line[] {
  if (view.plain) return [];
  return rateCurve(
    pictureOf(chosen(sheet, fitting), fitting.rows, []),
    {columns: room.columns - LIST_COLUMNS - 1, rows: room.body},
    view.glyphs,
  );
}

function beside(left: readonly Line[], right: readonly Line[], rows: number): Line[] {
  return Array.from({length: rows}, (_, i): Line => {
    const [first] = left[i] ?? [];
    return [piece(fill(first?.text ?? '', LIST_COLUMNS), first?.kind ?? 'plain'), ...(right[i] ?? [])];
  });
}

function rowsLine({of, typing}: FitSheet, fitting: Fitting | undefined): Line {
  const rows = fitting?.rows.map(({temperature, days}) => `${round(temperature)}=${round(days)}`) ?? of.typed;
  return [piece(` days   ${rows.join('  ')} `), piece(typing === '' ? '' : `${typing}_`, 'seen')];
}

function belowLines(sheet: FitSheet, fitting: Fitting | undefined, columns: number): Line[] {
  const kept = [
    `profile ${sheet.profile ?? '–'}`,
    ...(sheet.name === undefined ? [] : [sheet.name]),
    `stage ${sheet.stage ?? '–'}`,
    `source ${sheet.source ?? sheet.of.file ?? (sheet.of.lots === undefined ? '–' : `lots ${sheet.of.lots}`)}`,
  ];
  const keep = line(` keep   ${kept.join(', ')}`);
  if (fitting === undefined) return [keep];
  const one: Compared | undefined = fitting.compared[sheet.cursor - 1];
  const spec = chosen(sheet, fitting);
  const support = one?.aicc === undefined || one.aicc === null ? '' : `, AICc ${one.aicc.toFixed(1)}`;
  const {warnings} = one ?? fitting.best;
  return [
    keep,
    line(` model  ${spec.kind}: ${landmarkWords(spec)}${support}`),
    ...warnings.flatMap(text =>
      wrap(`${text}.`, columns - 10).map((part, i) =>
        line(`${i === 0 ? ' look   ' : '        '}${part}`, 'late'),
      ),
    ),
  ];
}

function round(value: number): string {
  return String(Math.round(value * 10) / 10);
}
