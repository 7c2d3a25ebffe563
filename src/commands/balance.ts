import {balanceInWords, balanceOf, exactness, lostInWords} from '../records/balance.ts';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {type Command, examples} from './command.ts';

export const command: Command = {
  declare(command) {
    command.argument('[lot]', 'one lot (default: all that are open)');
    examples(command, 'balance 26-031-A');
  },
  async run(invocation, [code]) {
    const {state} = await openDesk(invocation, code === undefined ? 'open' : 'all');
    const lots = [...state.lots.values()].filter(lot =>
      code === undefined ? lot.closed === undefined : lot.code === code,
    );
    if (code !== undefined && lots.length === 0)
      throw new Refusal(
        `there is no lot "${code}"`,
        'balance',
        'teneral list lots shows the lots there are.',
      );
    invocation.answer(lots.map(balanceOf), () =>
      lots.map(lot => `${lot.code}  ${balanceInWords(lot)}${lostInWords(lot)}${exactness(lot)}`).join('\n'),
    );
  },
};
