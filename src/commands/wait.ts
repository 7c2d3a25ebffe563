import {textOfLines} from '../exchange/pictures/line.ts';
import {comingAnswer} from '../work/coming-answer.ts';
import {openDesk} from '../work/desk.ts';
import {waiting} from '../work/waiting.ts';
import {waitingLines} from '../work/waiting-words.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('[code...]', 'units or lots (default: the whole room)')
      .option('--until <day>', 'a day or an instant (default: the first round after the next closed day)');
    examples(command, 'wait', 'wait 26-031-A', 'wait --until 2026-06-15');
  },
  async run(invocation, codes, options) {
    const desk = await openDesk(invocation);
    const {civil} = desk;
    const answer = await waiting(desk, textOption(options, 'until'), codes);
    const {until, canWait, tasks, lots, visits} = answer;
    invocation.answer(
      {
        until: civil.iso(until),
        canWait,
        tasks: tasks.map(({safeUntil, visit, ...task}) => ({
          ...task,
          safeUntil: civil.iso(safeUntil),
          visit: visit === undefined ? null : {from: civil.iso(visit.from), to: civil.iso(visit.to)},
        })),
        emergence: lots,
        visits: visits.map(each => comingAnswer(each, civil)),
      },
      () => textOfLines(waitingLines(answer, civil, invocation.columns)),
    );
  },
};
