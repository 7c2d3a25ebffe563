import {balanceInWords, exactness, lostInWords} from '../records/balance.ts';
import {outcomeOf} from '../records/outcome.ts';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {outcomeSections} from '../work/outcome-text.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command.argument('<lot>', 'the lot');
    examples(command, 'outcome 26-014-A');
  },
  async run(invocation, [code = '']) {
    const desk = await openDesk(invocation, 'all');
    const lot = desk.state.lots.get(code);
    if (lot === undefined)
      throw new Refusal(
        `there is no lot "${code}"`,
        'outcome',
        'teneral list lots --all shows the lots there are.',
      );
    const {half, ...outcome} = outcomeOf(lot, desk.state, desk.civil);
    const iso = (at: number | null) => (at === null ? null : desk.civil.iso(at));
    const told = {...outcome, half: {all: iso(half.all), female: iso(half.female), male: iso(half.male)}};
    invocation.answer(told, () =>
      [
        `${lot.code}  ${balanceInWords(lot)}${lostInWords(lot)}${exactness(lot)}`,
        ...outcomeSections(lot, {...outcome, half}, desk).map(({title, lines}) =>
          [title, ...lines.map(line => `  ${line}`)].join('\n'),
        ),
      ].join('\n\n'),
    );
  },
};
