import {lineOf} from '../work/daybook.ts';
import {undo} from '../work/undo.ts';
import type {Command} from './command.ts';

const SHOWN = 12;

export const command: Command = {
  declare() {},
  async run(invocation) {
    const {applied, voided, desk} = await undo(invocation);
    invocation.answer({...applied, voided: voided.map(({id}) => id)}, () =>
      [
        `taken back, ${voided.length} ${voided.length === 1 ? 'entry' : 'entries'}:`,
        ...voided.slice(0, SHOWN).map(entry => lineOf(entry, desk)),
        ...(voided.length > SHOWN ? [`and ${voided.length - SHOWN} more`] : []),
      ].join('\n'),
    );
  },
};
