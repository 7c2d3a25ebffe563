import {readDay} from '../exchange/instants.ts';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {today} from '../work/today.ts';
import {todayAnswer} from '../work/today-answer.ts';
import {type Command, examples, textOption} from './command.ts';
import {todayText} from './today-text.ts';

export const command: Command = {
  declare(command) {
    command.option('--on <day>', 'the list of another day');
    examples(command, 'today', 'today --on 2026-06-15');
  },
  async run(invocation, _, options) {
    const desk = await openDesk(invocation);
    const given = textOption(options, 'on');
    const day = given === undefined ? undefined : readDay(given);
    if (given !== undefined && day === undefined)
      throw new Refusal(`"${given}" is no day`, '--on', 'Write it like 2026-06-15.');
    const list = await today(desk, day);
    invocation.answer(invocation.json ? todayAnswer(list, desk) : null, () =>
      todayText(list, desk, invocation.columns),
    );
  },
};
