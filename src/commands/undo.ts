import {lineOf} from '../work/daybook.ts';
import {undo} from '../work/undo.ts';
import type {Command} from './command.ts';

export const command: Command = {
  declare() {},
  async run(invocation) {
    const {applied, voided, desk} = await undo(invocation);
    invocation.answer({...applied, voided: voided.map(({id}) => id)}, () =>
      ['taken back:', ...voided.map(entry => lineOf(entry, desk))].join('\n'),
    );
  },
};
