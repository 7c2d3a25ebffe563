import {finish} from '../work/care-acts.ts';
import {lineOf} from '../work/daybook.ts';
import {type Command, examples} from './command.ts';
import {collect} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<id...>', 'tasks as teneral today lists them')
      .option('--seen <key=value>', 'an answer the task asks for; may be given several times', collect);
    examples(
      command,
      'done feed-cage:26-031-A:2026-06-12 --seen foodLeft=some --seen mould=no --seen alive=18',
    );
  },
  async run(invocation, ids, {seen}) {
    const {applied, written, desk, stillToRecord} = await finish(
      invocation,
      ids,
      Array.isArray(seen) ? seen.map(String) : [],
    );
    invocation.answer({...applied, stillToRecord}, () =>
      [...written.map(entry => lineOf(entry, desk)), ...stillToRecord].join('\n'),
    );
  },
};
