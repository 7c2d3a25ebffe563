import {cut} from '../exchange/pictures/fit.ts';
import {textTable} from '../exchange/text-table.ts';
import {openDesk} from '../work/desk.ts';
import {type Command, examples} from './command.ts';

const SHOWN = 30;

export const command: Command = {
  declare(command) {
    command.argument('<words...>', 'a code, a name, a place, a person, a day, or words of a note');
    examples(command, 'find brassica', 'find 26-022', 'find skarow kitchen', 'find 2026-06-10 tovan');
  },
  async run(invocation, words) {
    const {finderOf} = await import('../work/find.ts');
    const desk = await openDesk(invocation, 'all');
    const found = finderOf(desk).find(words.join(' '));
    invocation.answer(found, () => {
      if (found.length === 0) return 'nothing holds all these words';
      const table = textTable(found.slice(0, SHOWN), [
        {head: 'what', cell: row => row.entry ?? row.kind},
        {head: 'code', cell: row => row.code},
        {head: 'in words', cell: row => row.text},
      ]);
      const lines = table.split('\n').map(line => cut(line, invocation.columns));
      return [
        ...lines,
        ...(found.length > SHOWN ? [`and ${found.length - SHOWN} more; add a word`] : []),
      ].join('\n');
    });
  },
};
