// Fits in words: figures, the curve with its points, and what it cannot tell.
import {wrap} from '../exchange/pictures/fit.ts';
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {rateCurve} from '../exchange/pictures/rate-curve.ts';
import {textTable} from '../exchange/text-table.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import type {RateModelSpec} from '../thermal/rate-model.ts';
import type {BestModel, Compared, CurveAnswer, LineAnswer, Predicted} from '../work/fit.ts';
import type {FitInput} from '../work/fit-input.ts';
import {pictureOf} from '../work/fit-picture.ts';
import type {FitSaved} from '../work/fit-saved.ts';
import {landmarkWords} from '../work/landmark-words.ts';

/** What a text is drawn with. */
export interface Drawing {
  readonly columns: number;
  readonly glyphs: Glyphs;
  readonly input: FitInput;
}

const MOST_COLUMNS = 100;
const ROWS = 12;

export function lineText(answer: LineAnswer, rows: readonly Observed[], drawing: Drawing): string {
  const {method, n, lower, lowerSe, degreeDays, degreeDaysSe, r2, predicted} = answer;
  const plusMinus = (value: number, se: number | null) =>
    `${value.toFixed(1)}${se === null ? '' : ` ± ${se.toFixed(1)}`}`;
  const line = method === 'linear' ? 'line of the rates' : 'reduced major axis of D·T on D';
  return parts(
    `${line}, ${n} rows${r2 === null ? '' : `, r² ${r2.toFixed(3)}`}`,
    [
      `  lower threshold  ${plusMinus(lower, lowerSe)} °C`,
      `  degree-days      ${plusMinus(degreeDays, degreeDaysSe)}`,
    ].join('\n'),
    picture({kind: 'degree-day', lower, degreeDays}, rows, predicted, drawing),
    predictedTable(rows, predicted),
    ...foot(answer.warnings, drawing),
  );
}

export function curveText(answer: CurveAnswer, rows: readonly Observed[], drawing: Drawing): string {
  const {model, n, rss, aicc, predicted} = answer;
  return parts(
    `${model.kind}, ${n} rows: ${landmarkWords(model)}`,
    [
      ...parameterWords(model).map(words => `  ${words}`),
      `  left over        ${rss.toExponential(3)} per day²${aicc === null ? '' : `, AICc ${aicc.toFixed(1)}`}`,
    ].join('\n'),
    picture(model, rows, predicted, drawing),
    predictedTable(rows, predicted),
    ...foot(answer.warnings, drawing),
  );
}

export function comparedText(
  answers: readonly Compared[],
  {model: best, warnings}: BestModel,
  rows: readonly Observed[],
  drawing: Drawing,
): string {
  const celsius = (value: number | null) => value?.toFixed(1) ?? '–';
  const lowest = Math.min(...answers.map(({aicc}) => aicc ?? Number.POSITIVE_INFINITY));
  return parts(
    `${answers.length} models of the same rows, the best supported first`,
    textTable(answers, [
      {head: 'model', cell: ({model}) => model.kind},
      {head: 'lower °C', right: true, cell: ({lower}) => celsius(lower)},
      {head: 'fastest', right: true, cell: ({optimum}) => celsius(optimum)},
      {head: 'upper', right: true, cell: ({upper}) => celsius(upper)},
      {head: 'left over', right: true, cell: ({rss}) => rss.toExponential(2)},
      {
        head: 'AICc',
        right: true,
        cell: ({aicc}) =>
          aicc === null
            ? 'too few rows'
            : aicc === lowest
              ? aicc.toFixed(1)
              : `+${(aicc - lowest).toFixed(1)}`,
      },
    ]),
    `--save keeps ${best.kind}: ${landmarkWords(best)}`,
    picture(best, rows, [], drawing),
    ...foot(warnings, drawing),
  );
}

export function savedText({profile, stages, doubts}: FitSaved): string {
  return parts(
    [
      `kept in the profile ${profile}:`,
      ...stages.map(({stage, rate}) => `  ${stage}: ${rate.kind}, ${landmarkWords(rate)}`),
    ].join('\n'),
    doubts.length === 0 ? '' : `Questions\n${doubts.map(({field, why}) => `  ${field}: ${why}`).join('\n')}`,
    `teneral profile show ${profile} shows it.`,
  );
}

function parameterWords(model: RateModelSpec): string[] {
  return Object.entries(model).flatMap(([name, value]) =>
    typeof value === 'number' ? [`${name.padEnd(16)} ${Number(value.toPrecision(6))}`] : [],
  );
}

/** The curve with the points it goes by; x marks rows that were left out. */
function picture(
  model: RateModelSpec,
  rows: readonly Observed[],
  used: readonly Predicted[],
  {columns, glyphs}: Drawing,
): string {
  const curve = pictureOf(model, rows, used);
  const signs = curve.points.some(({left}) => left === true) ? 'o counted, x left out' : 'o as given';
  const lines = rateCurve(curve, {columns: Math.min(columns, MOST_COLUMNS) - 1, rows: ROWS}, glyphs);
  return `days by temperature, ${model.kind}; ${signs}\n${textOfLines(lines)}`;
}

function predictedTable(rows: readonly Observed[], predicted: readonly Predicted[]): string {
  const seen = predicted.map((each, i) => {
    const used = rows.filter(({temperature}) => temperature === each.temperature);
    const nth = predicted.slice(0, i).filter(({temperature}) => temperature === each.temperature).length;
    return {...each, given: used[nth]?.days ?? Number.NaN};
  });
  return textTable(seen, [
    {head: '°C', right: true, cell: ({temperature}) => String(Math.round(temperature * 100) / 100)},
    {head: 'days', right: true, cell: ({given}) => given.toFixed(2)},
    {head: 'by the fit', right: true, cell: ({days}) => days?.toFixed(2) ?? 'never'},
    {
      head: 'off by',
      right: true,
      cell: ({days, given}) => (days === null ? '–' : `${(100 * (days / given - 1)).toFixed(1)} %`),
    },
  ]);
}

/** What lots tell of the days of their stages. */
export function lotsText({durations, passedOver}: NonNullable<FitInput['lots']>, columns: number): string {
  return parts(
    `days that lots of this room took over their stages, ${durations.length} in all`,
    lotsTable(durations),
    'A fit takes lots or a profile by name, one stage (--stage), and two temperatures at least.',
    passedOver.length === 0
      ? ''
      : `Lots that gave nothing\n${listed(passedOver, Math.min(columns, MOST_COLUMNS))}`,
  );
}

/** What the rows cannot tell, and what lots gave. */
function foot(warnings: readonly string[], {columns, input}: Drawing): string[] {
  const width = Math.min(columns, MOST_COLUMNS);
  const without =
    input.withoutDays.length === 0
      ? []
      : [`no days are given at ${input.withoutDays.map(at => `${at} °C`).join(', ')}: left out`];
  const said = [...warnings, ...without];
  return [
    ...(input.lots === undefined ? [] : [lotsTable(input.lots.durations)]),
    ...(input.lots === undefined || input.lots.passedOver.length === 0
      ? []
      : [`Lots that gave nothing\n${listed(input.lots.passedOver, width)}`]),
    ...(said.length === 0 ? [] : [`Look again\n${listed(said, width)}`]),
  ];
}

function lotsTable(durations: NonNullable<FitInput['lots']>['durations']): string {
  return textTable(durations, [
    {head: 'lot', cell: ({lot}) => lot},
    {head: 'stage', cell: ({stage}) => stage},
    {head: 'animals', right: true, cell: ({n}) => String(n)},
    {head: 'mean °C', right: true, cell: ({temperature}) => temperature.toFixed(1)},
    {head: 'from', right: true, cell: ({lowC}) => lowC.toFixed(1)},
    {head: 'to', right: true, cell: ({highC}) => highC.toFixed(1)},
    {head: 'days', right: true, cell: ({days}) => days.toFixed(1)},
    {head: 'give or take', right: true, cell: ({looseDays}) => looseDays.toFixed(1)},
  ]);
}

/** Sentences below each other, each with its stop. */
function listed(sentences: readonly string[], width: number): string {
  return sentences
    .flatMap(text => wrap(`${text}.`, width - 4).map((line, i) => `${i === 0 ? '  ' : '    '}${line}`))
    .join('\n');
}

function parts(...all: readonly string[]): string {
  return all.filter(part => part !== '').join('\n\n');
}
