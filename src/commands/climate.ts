import {type DaySummary, daySummaries} from '../climate/day-summaries.ts';
import {coursePlot} from '../exchange/pictures/course-plot.ts';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {textTable} from '../exchange/text-table.ts';
import {dayWords} from '../exchange/time-words.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {midnights} from '../work/day-bounds.ts';
import {type Desk, openDesk} from '../work/desk.ts';
import {type UnitCourse, unitCourse} from '../work/unit-course.ts';
import {type Command, examples, type Invocation} from './command.ts';
import {numberWord} from './words.ts';

const PLOT_ROWS = 16;

export const command: Command = {
  declare(command) {
    command
      .argument('<unit>', 'a unit')
      .option('--days <n>', 'how many days back', numberWord, 7)
      .option('--ahead <n>', 'how many days ahead', numberWord, 2);
    examples(command, 'climate C3', 'climate T1 --days 60');
  },
  async run(invocation, [code = ''], {days, ahead}) {
    const desk = await openDesk(invocation);
    const nowDays = desk.now / MS_PER_DAY;
    const bounds = midnights(desk.civil, nowDays - Number(days), nowDays + Number(ahead));
    const found = await unitCourse(desk, code, bounds[0]!, bounds.at(-1)!);
    const summaries = daySummaries(found.course, bounds).map(summary => ({
      day: desk.civil.dayOf(summary.fromDays * MS_PER_DAY),
      ...summary,
    }));
    const {unit, summary, thresholds} = found;
    const answer = {
      unit: unit.code,
      setPoints: unit.setPoints ?? null,
      readings: summary,
      thresholds,
      days: summaries.map(({fromDays: _from, toDays: _to, ...rest}) => rest),
    };
    invocation.answer(answer, () => textOf(found, summaries, desk, invocation, bounds));
  },
};

function textOf(
  {unit, course, summary, read, thresholds}: UnitCourse,
  summaries: readonly (DaySummary & {readonly day: string})[],
  {civil, now}: Desk,
  {columns}: Invocation,
  bounds: readonly number[],
): string {
  const plot = coursePlot(
    {
      course,
      fromDays: bounds[0]!,
      toDays: bounds.at(-1)!,
      nowDays: now / MS_PER_DAY,
      levels: thresholds.flatMap(({lot, stage, lowerC}) =>
        lowerC === null ? [] : [{valueC: lowerC, name: `${lot} ${stage}`}],
      ),
      humidity: read,
      civil,
    },
    {columns: Math.max(40, Math.min(columns, 120)), rows: PLOT_ROWS},
    glyphsFor(process.env),
  );
  const degrees = (celsius: number | null) => celsius?.toFixed(1) ?? '–';
  const table = textTable(summaries, [
    {head: 'day', cell: row => dayWords(row.day, civil, now)},
    {head: 'coolest', right: true, cell: row => degrees(row.minimumC)},
    {head: 'mean', right: true, cell: row => degrees(row.meanC)},
    {head: 'warmest °C', right: true, cell: row => degrees(row.maximumC)},
  ]);
  const percent = Math.round(summary.coverage * 100);
  return `${unit.code}, ${unit.place}: ${percent} % of the time up to now read; ${summary.basis}\n\n${textOfLines(plot)}\n\n${table}`;
}
