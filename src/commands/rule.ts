import {lineOf} from '../work/daybook.ts';
import {writeRule} from '../work/rules.ts';
import {type Command, examples} from './command.ts';
import {ruleChange, ruleOptions} from './rule-options.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<code>', 'the rule’s code; that of a start value replaces it')
      .argument('[task]', 'feed, clean, change-water …; needed for a new rule');
    ruleOptions(command)
      .option('--off', 'switch the rule off')
      .option('--on', 'switch it on again')
      .option('--at <instant>', 'since when (default: now)')
      .option('--key <text>', 'applied once only, however often it is sent');
    examples(
      command,
      'rule feed-sallow feed --every 1 --latest 1.5 --lot 26-031-A',
      'rule feed-lepidoptera --every 3 --latest 4',
      'rule feed-coccinellidae --amount "larva-1 6, larva-4 50 aphids each a day"',
      'rule clean-cage --off',
    );
  },
  async run(invocation, [code = '', task], options) {
    const {off, on, at, key} = options;
    const change = {...ruleChange(task, options), off: off === true ? true : on === true ? false : undefined};
    const more = Object.fromEntries(Object.entries({at, key}).filter(([, value]) => value !== undefined));
    const {applied, written, desk} = await writeRule(invocation, code, change, more);
    invocation.answer(applied, () =>
      written.length === 0
        ? 'recorded before under this key; nothing was added'
        : written.map(entry => lineOf(entry, desk)).join('\n'),
    );
  },
};
