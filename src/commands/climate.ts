import {InvalidArgumentError, Option} from 'commander';
import {litSpans} from '../climate/set-points.ts';
import {classTable, dayTable, meanDayTable} from '../exchange/climate-tables.ts';
import {courseLevels} from '../exchange/pictures/course-levels.ts';
import {coursePlot} from '../exchange/pictures/course-plot.ts';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {courseRows} from '../work/course-rows.ts';
import {midnights} from '../work/day-bounds.ts';
import {type Desk, openDesk} from '../work/desk.ts';
import {type UnitClimate, unitClimate} from '../work/unit-climate.ts';
import {type UnitCourse, unitCourse} from '../work/unit-course.ts';
import {waterOffsetWords, waterRefusalWords} from '../work/water-words.ts';
import {type Command, examples, type Invocation, numberOption, type Options} from './command.ts';
import {numberWord} from './words.ts';

const PLOT_ROWS = 16;
const USUAL_DAYS = 7;
const USUAL_AHEAD = 2;

export const command: Command = {
  declare(command) {
    command
      .argument('<unit>', 'a unit')
      .option('--days <n>', `how many days back (default: ${USUAL_DAYS})`, numberWord)
      .option('--ahead <n>', `how many days ahead (default: ${USUAL_AHEAD})`, numberWord)
      .option('--hours <n>', 'in place of --days: so many hours up to now', numberWord)
      .option('--classes <C>', 'width of the classes of temperature', numberWord, 2)
      .addOption(
        new Option('--csv <what>', 'as comma-separated text: the days, or the course hour by hour').choices([
          'days',
          'hours',
        ]),
      );
    examples(
      command,
      'climate C3',
      'climate C3 --hours 12',
      'climate T1 --days 365 --ahead 0',
      'climate C3 --days 60 --csv hours > C3.csv',
    );
  },
  async run(invocation, [code = ''], options) {
    const desk = await openDesk(invocation);
    const span = spanOf(options, desk);
    const width = numberOption(options, 'classes') ?? Number.NaN;
    if (!(width > 0)) throw new InvalidArgumentError('--classes is a width above 0.');
    const found = await unitCourse(desk, code, span.fromDays, span.toDays);
    const climate = unitClimate(found, desk, span, width);
    const {unit, summary, thresholds} = found;
    const answer = {
      unit: unit.code,
      setPoints: unit.setPoints ?? null,
      readings: summary,
      thresholds,
      days: climate.days.map(({fromDays: _from, toDays: _to, ...rest}) => rest),
      classes: climate.classes,
      meanDay: climate.meanDay,
      water: waterAnswer(climate, desk),
      waterOffset: found.course.water ?? null,
    };
    invocation.answer(answer, () => {
      if (options.csv === 'days') return daysCsv(climate);
      if (options.csv === 'hours') return hoursCsv(found, desk, span);
      return textOf(found, climate, desk, invocation, span);
    });
  },
};

interface Span {
  readonly fromDays: number;
  readonly toDays: number;
}

/** Whole days, or the hours up to now. */
function spanOf(options: Options, {civil, now}: Desk): Span {
  const nowDays = now / MS_PER_DAY;
  const hours = numberOption(options, 'hours');
  if (hours !== undefined) {
    if (!(hours > 0)) throw new InvalidArgumentError('--hours is a number above 0.');
    return {fromDays: nowDays - hours / 24, toDays: nowDays + (numberOption(options, 'ahead') ?? 0)};
  }
  const days = numberOption(options, 'days') ?? USUAL_DAYS;
  const ahead = numberOption(options, 'ahead') ?? USUAL_AHEAD;
  if (days < 0 || ahead < 0 || days + ahead > 1500)
    throw new InvalidArgumentError('--days and --ahead are from 0 to 1500.');
  const bounds = midnights(civil, nowDays - days, nowDays + Math.max(ahead, 1e-6));
  return {fromDays: bounds[0]!, toDays: bounds.at(-1)!};
}

function waterAnswer({water}: UnitClimate, {civil}: Desk) {
  if (water === null) return null;
  const readings = water.readings.map(({at, temperature, values}) => ({
    at: civil.iso(at),
    ...(temperature === undefined ? {} : {temperature}),
    ...values,
  }));
  return {readings, evaporation: water.evaporation};
}

function textOf(
  {unit, course, summary, read, thresholds}: UnitCourse,
  climate: UnitClimate,
  {civil, now}: Desk,
  {columns}: Invocation,
  span: Span,
): string {
  const glyphs = glyphsFor(process.env);
  const humid = read?.rhPercent.some(value => !Number.isNaN(value)) === true;
  const plot = coursePlot(
    {
      course,
      ...span,
      nowDays: now / MS_PER_DAY,
      levels: courseLevels(unit, thresholds),
      lit: litSpans(unit, civil, span),
      humidity: humid ? read : undefined,
      civil,
    },
    {columns: Math.max(40, Math.min(columns, 120)), rows: PLOT_ROWS},
    glyphs,
  );
  const percent = Math.round(summary.coverage * 100);
  const parts = [
    `${unit.code}, ${unit.place}: ${percent} % of the time up to now read; ${summary.basis}`,
    textOfLines(plot),
    dayTable(climate.days, civil, now),
  ];
  if (climate.classes.length > 0) parts.push(classTable(climate.classes, glyphs.bars.at(-1)!));
  if (climate.meanDay !== null) parts.push(meanDayTable(climate.meanDay));
  if (course.water !== undefined)
    parts.push(`the water is ${waterOffsetWords(course.water)}; ${waterRefusalWords(course.water)}`);
  const evaporation = climate.water?.evaporation;
  if (evaporation !== null && evaporation !== undefined)
    parts.push(
      `evaporates ${evaporation.litresPerDay.toFixed(2)} L a day, told over ${evaporation.days.toFixed(1)} days; top up with soft or distilled water`,
    );
  return parts.join('\n\n');
}

function daysCsv({days}: UnitClimate): string {
  const cell = (value: number | null | undefined) => value ?? '';
  const rows = days.map(({day, minimumC, meanC, maximumC, known, estimated, humidity}) =>
    [
      day,
      cell(minimumC),
      cell(meanC),
      cell(maximumC),
      known,
      cell(humidity?.minimum),
      cell(humidity?.mean),
      cell(humidity?.maximum),
      estimated,
    ].join(','),
  );
  const head =
    'day,minimum_C,mean_C,maximum_C,known,humidity_minimum_percent,humidity_mean_percent,humidity_maximum_percent,estimated';
  return [head, ...rows].join('\n');
}

function hoursCsv({course}: UnitCourse, {civil}: Desk, {fromDays, toDays}: Span): string {
  const rows = courseRows(course, fromDays, toDays).map(
    ({atDays, temperatureC, basis}) =>
      `${civil.iso(Math.round(atDays * MS_PER_DAY))},${temperatureC ?? ''},${basis}`,
  );
  return ['time,temperature_C,basis', ...rows].join('\n');
}
