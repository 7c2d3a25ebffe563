import {textTable} from '../exchange/text-table.ts';
import {dayWords} from '../exchange/time-words.ts';
import {type OpenEnd, OVERDUE_DAYS, openEnds} from '../records/open-ends.ts';
import {openDesk} from '../work/desk.ts';
import {type Command, examples} from './command.ts';
import {numberWord} from './words.ts';

const KINDS: readonly OpenEnd[] = ['unlinked', 'unlabelled', 'unidentified', 'overdue', 'unsorted'];

export const command: Command = {
  declare(command) {
    command
      .argument('[what]', `only what is ${KINDS.join(', ')}`)
      .option(
        '--days <n>',
        'overdue to be identified after so many (common practice)',
        numberWord,
        OVERDUE_DAYS,
      );
    examples(command, 'open-ends', 'open-ends unidentified', 'open-ends overdue --days 90');
  },
  async run(invocation, [what], {days}) {
    const {state, now, civil} = await openDesk(invocation, 'all');
    const all = openEnds(state, now, typeof days === 'number' ? days : OVERDUE_DAYS);
    const rows = all.filter(one => what === undefined || one.what === what);
    invocation.answer(
      rows.map(row => ({...row, since: civil.iso(row.since)})),
      () =>
        rows.length === 0
          ? 'nothing is open'
          : textTable(rows, [
              {head: 'what', cell: row => row.kind},
              {head: 'code', cell: row => row.code},
              {head: 'since', cell: row => dayWords(civil.dayOf(row.since), civil, now)},
              {head: 'open', cell: row => `${row.what}: ${row.missing}`},
            ]),
    );
  },
};
