import {skip} from '../work/care-acts.ts';
import {lineOf} from '../work/daybook.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<id...>', 'tasks as teneral today lists them')
      .option('--why <text>', 'why it could not be done');
    examples(command, 'skip clean-cage:C1:2026-06-12 --why "freshly moulted, not to be disturbed"');
  },
  async run(invocation, ids, options) {
    const {applied, written, desk} = await skip(invocation, ids, textOption(options, 'why'));
    invocation.answer(applied, () => written.map(entry => lineOf(entry, desk)).join('\n'));
  },
};
