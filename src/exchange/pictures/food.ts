// The food of the days ahead in lines: a row for each food, a column for each day, and what to get before closed days.
import {quantityWords, rationWords, scaleOf} from '../../care/amounts.ts';
import type {BeforeClosed, FoodAhead, FoodOnDays, FoodSum} from '../../care/food-ahead.ts';
import type {Civil, Day} from '../../records/civil.ts';
import {listed} from '../../records/stage-words.ts';
import {dayMonth, weekdayDay} from './day-words.ts';
import {fill, wrap} from './fit.ts';
import {type Line, line, piece} from './line.ts';

const NAME_COLUMNS = 16;
const DAY_COLUMNS = 7;
const TOTAL_COLUMNS = 12;
/** For more days than this only the totals are told. */
const MOST_BY_DAY = 14;
const DAYS_IN_A_ROW = 7;

/** Nothing where nobody is fed. */
export function foodLines(
  {foods, byEye, beforeClosed}: FoodAhead,
  days: readonly Day[],
  civil: Civil,
  columns: number,
): Line[] {
  if (foods.length === 0 && byEye.length === 0) return [];
  const eye = byEye.map(({unit, lot}) => (lot === null ? unit : `${unit} (${lot})`));
  const told = (text: string) => wrap(text, columns - 2).map(part => line(` ${part}`));
  return [
    line(' Food, for the animals and stages last counted', 'heading'),
    ...blocks(days).flatMap(block => table(foods, block, days, civil)),
    ...beforeClosed.flatMap(spell => told(beforeWords(spell, civil))),
    ...(eye.length === 0 ? [] : told(`by eye, no amount is known: ${listed(eye)}`)),
  ];
}

function blocks(days: readonly Day[]): (readonly Day[])[] {
  if (days.length > MOST_BY_DAY) return [[]];
  return Array.from({length: Math.ceil(days.length / DAYS_IN_A_ROW)}, (_, i) =>
    days.slice(i * DAYS_IN_A_ROW, (i + 1) * DAYS_IN_A_ROW),
  );
}

/** The totals stand behind the last days. */
function table(
  foods: readonly FoodOnDays[],
  block: readonly Day[],
  days: readonly Day[],
  civil: Civil,
): Line[] {
  if (foods.length === 0) return [];
  const isLast = block.at(-1) === days.at(-1) || block.length === 0;
  const heads = block.map(day => `${weekdayDay(day, civil).slice(0, 3)} ${Number(day.slice(8))}`);
  const cells = (texts: readonly string[]) => texts.map(text => text.padStart(DAY_COLUMNS)).join('');
  const end = (text: string) => (isLast ? text.padStart(TOTAL_COLUMNS) : '');
  return [
    [piece(` ${fill('', NAME_COLUMNS)}${cells(heads)}${end('together')}`, 'expected')],
    ...foods.flatMap(food => {
      const {name, by} = scaleOf(food.amount, food.of);
      const sign = food.atLeast ? 'over ' : food.estimated ? 'about ' : '';
      const where = [
        ...(food.plant === null ? [] : [food.plant]),
        ...(food.inAll ? ['for all the time that they feed'] : []),
        food.units.join(' '),
      ];
      const row = (text: string, perDay: FoodOnDays['perDay'], together: number, before: string) => {
        const most = Math.max(food.amount, food.grown ?? 0);
        const amounts = block.map(day => numberWords(seen(perDay[day] ?? 0, most) / by));
        return `${fill(text, NAME_COLUMNS)}${cells(amounts)}${end(`${before}${numberWords(seen(together, most) / by)}`)}`;
      };
      return [
        line(` ${row(name, food.perDay, food.amount, sign)}`),
        ...(food.grown === null || food.grownPerDay === null
          ? []
          : [line(` ${row('  as they grow', food.grownPerDay, food.grown, 'about ')}`, 'expected')]),
        line(`   ${where.join(', ')}`, 'expected'),
      ];
    }),
  ];
}

/** What is next to nothing beside the rest of its row is none. */
function seen(amount: number, most: number): number {
  return amount < most / 200 ? 0 : amount;
}

/** The number as it stands before its unit elsewhere. */
function numberWords(amount: number): string {
  return amount === 0 ? '–' : quantityWords(amount, '').trim();
}

/** "Get before Sat 13 Jun: about 152 cm² leaf and 4.8 mg food, for the visits until Sun 14 Jun." */
function beforeWords({from, to, foods}: BeforeClosed, civil: Civil): string {
  const date = (day: Day) => `${weekdayDay(day, civil).slice(0, 3)} ${dayMonth(day)}`;
  const until = from === to ? 'for the visit on that day' : `for the visits until ${date(to)}`;
  return `to get before ${date(from)}, closed: ${listed(foods.map(sumWords))}, ${until}`;
}

function sumWords(food: FoodSum): string {
  const grown =
    food.grown === null
      ? []
      : [`about ${quantityWords(food.grown, food.of).replace(` ${food.of}`, '')} as they grow`];
  const more = [...(food.plant === null ? [] : [food.plant]), ...grown];
  return `${rationWords(food)}${more.length === 0 ? '' : ` (${more.join('; ')})`}`;
}
