import {minuteWords} from '../care/when-words.ts';
import {monthLines, weekLines} from '../exchange/pictures/agenda.ts';
import {foodLines} from '../exchange/pictures/food.ts';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {ahead} from '../work/ahead.ts';
import {aheadAnswer} from '../work/ahead-answer.ts';
import {openDesk} from '../work/desk.ts';
import {foodOfDays} from '../work/food-ahead.ts';
import {type Command, examples, textOption} from './command.ts';
import {numberWord} from './words.ts';

/** More days than this are shown a line each. */
const MOST_IN_FULL = 14;

export const command: Command = {
  declare(command) {
    command
      .option('--days <n>', 'how many days, from today on', numberWord, 7)
      .option('--for <name>', 'only what this person takes');
    examples(command, 'ahead', 'ahead --days 31', 'ahead --for "A. Keeper"');
  },
  async run(invocation, _, options) {
    const desk = await openDesk(invocation);
    const who = textOption(options, 'for');
    const plan = await ahead(desk, Number(options.days), who);
    const food = await foodOfDays(desk, plan);
    invocation.answer(aheadAnswer(plan, food, desk), () => {
      const glyphs = glyphsFor(process.env);
      const {days} = plan;
      const tasks = days.reduce((sum, {items}) => sum + items.length, 0);
      const minutes = days.reduce((sum, day) => sum + day.minutes, 0);
      const head = `${days.length} ${days.length === 1 ? 'day' : 'days'} from today · ${desk.room.name}${who === undefined ? '' : ` · ${who}`} · ${tasks} to do, about ${minuteWords(minutes)}`;
      const lines =
        days.length > MOST_IN_FULL
          ? monthLines(days, desk.civil, glyphs)
          : weekLines(days, desk.civil, glyphs, invocation.columns);
      const foods = foodLines(
        food,
        days.map(({day}) => day),
        desk.civil,
        invocation.columns,
      );
      return [head, textOfLines(lines), ...(foods.length === 0 ? [] : [textOfLines(foods)])].join('\n\n');
    });
  },
};
