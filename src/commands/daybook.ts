import {readInstant} from '../exchange/instants.ts';
import {textTable} from '../exchange/text-table.ts';
import {instantWords} from '../exchange/time-words.ts';
import {instantOf} from '../records/entry.ts';
import {whenWritten} from '../records/plain-words.ts';
import {Refusal} from '../records/refusal.ts';
import {type DaybookLine, daybook} from '../work/daybook.ts';
import {openDesk} from '../work/desk.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .argument(
        '[code]',
        'only what names this sample, lot, unit, logger or specimen; of an entry, what became of it',
      )
      .option('--since <day>', 'from this day or instant on');
    examples(command, 'daybook 26-031-A', 'daybook e118', 'daybook --since 2026-06-01');
  },
  async run(invocation, [code], options) {
    const desk = await openDesk(invocation, 'all');
    const given = textOption(options, 'since');
    const since = given === undefined ? undefined : readInstant(given, desk.civil);
    if (given !== undefined && since === undefined)
      throw new Refusal(`"${given}" is no day or instant`, '--since', 'Write it like 2026-06-01.');
    const lines = daybook(desk, {code, since});
    invocation.answer(lines, () =>
      lines.length === 0
        ? 'nothing was recorded in that time'
        : textTable(lines, [
            {head: 'entry', cell: line => line.id},
            {head: 'when', cell: line => instantWords(instantOf(line.at), desk.civil, desk.now)},
            {head: 'by', cell: line => line.by},
            {head: 'about', cell: line => line.about[0] ?? ''},
            {head: 'what', cell: whatOf},
          ]),
    );
  },
};

function whatOf({what, voided, void: taken, replaces}: DaybookLine): string {
  const corrects = replaces === null ? '' : ` (in place of ${replaces})`;
  if (!voided) return `${what}${corrects}`;
  if (taken === null) return `${what}${corrects} (void: does not count)`;
  const why = taken.reason === null ? '' : `: ${taken.reason}`;
  const instead = taken.replacedBy === null ? '' : `; ${taken.replacedBy} stands in its place`;
  return `${what}${corrects} (void, by ${taken.by} ${whenWritten(taken.recordedAt)}${why}${instead})`;
}
