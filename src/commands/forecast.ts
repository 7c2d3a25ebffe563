import {InvalidArgumentError} from 'commander';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {forecastAnswer} from '../work/forecast-answer.ts';
import {forecastSaid} from '../work/forecast-said.ts';
import {lessonsOf} from '../work/lessons.ts';
import {outlooks} from '../work/outlook.ts';
import {why} from '../work/why.ts';
import {whyAnswer} from '../work/why-words.ts';
import {type Command, examples} from './command.ts';
import {saidText} from './said-text.ts';
import {numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('[lot...]', 'lots (default: all that are open)')
      .option('--hold <C>', 'as if held at this temperature from now on', numberWord)
      .option('--published', 'with the published pace and survival, leaving out what finished lots taught')
      .option('--own', 'with what finished lots taught, also where the room is set to leave it out')
      .option(
        '--futures <number>',
        'how many futures of temperature the dates are taken over',
        futuresWord,
        50,
      )
      .option('--why', 'what it rests on: readings, candidates, figures and their sources');
    examples(command, 'forecast', 'forecast 26-031-A --why', 'forecast 26-031-A --hold 22');
  },
  async run(invocation, codes, {hold, why: whyAsked, published, own, futures}) {
    const desk = await openDesk(invocation, codes.length === 0 ? 'open' : 'all');
    if (published === true && own === true)
      throw new Refusal('it is asked both ways', '--published --own', 'Give one of them.');
    const lessons = published === true ? [] : own === true ? await lessonsOf(desk) : undefined;
    const answers = await outlooks(desk, {
      codes: codes.length === 0 ? undefined : codes,
      holdC: typeof hold === 'number' ? hold : undefined,
      futures: typeof futures === 'number' ? futures : undefined,
      lessons,
    });
    const reasons =
      whyAsked === true
        ? await Promise.all(
            answers.map(({lot}) =>
              why(desk, {
                lot: lot.code,
                holdC: typeof hold === 'number' ? hold : undefined,
                lessons,
              }),
            ),
          )
        : [];
    invocation.answer(
      answers.map((outlook, i) => {
        const told = reasons[i];
        const answer = forecastAnswer(outlook, desk);
        return told === undefined ? answer : {...answer, why: whyAnswer(told, desk)};
      }),
      () =>
        answers
          .map((outlook, i) => saidText(forecastSaid(outlook, desk, reasons[i]), invocation.columns))
          .join('\n\n') || 'no lot is open',
    );
  },
};

const MOST_FUTURES = 1000;

function futuresWord(word: string): number {
  const number = numberWord(word);
  if (Number.isInteger(number) && number >= 0 && number <= MOST_FUTURES) return number;
  throw new InvalidArgumentError(`"${word}" is no whole number from 0 to ${MOST_FUTURES}.`);
}
