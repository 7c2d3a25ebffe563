import {lineOf} from '../work/daybook.ts';
import {type Command, examples, textOption} from './command.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<entry>', 'the id of the wrong entry, as teneral daybook shows it')
      .argument('<field=value...>', 'what is right: count=3, stages.pupa=4; field= takes a field away')
      .option('--reason <text>', 'what was wrong with it')
      .option('--sure', 'write it down although it is unusual');
    examples(
      command,
      'correct e118 count=3 --reason "misread the tally"',
      'correct e120 at=2026-06-11T17:00 adults.0.sex=male',
    );
  },
  async run(invocation, [entry = '', ...changes], options) {
    const {correct} = await import('../work/correct.ts');
    const reason = textOption(options, 'reason');
    const {applied, written, desk} = await correct(invocation, {
      entry,
      changes,
      reason,
      sure: options.sure === true,
    });
    invocation.answer(applied, () => written.map(one => lineOf(one, desk)).join('\n'));
  },
};
