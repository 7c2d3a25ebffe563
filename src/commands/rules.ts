import type {RuleUse} from '../care/rule-use.ts';
import {howMuchText} from '../exchange/how-much.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {ruleLines, shortInterval, trialLines} from '../exchange/pictures/rules.ts';
import {type Column, textTable} from '../exchange/text-table.ts';
import type {Rule} from '../records/state.ts';
import {openDesk} from '../work/desk.ts';
import {rules, ruleUse, tryRule} from '../work/rules.ts';
import {type Command, examples, textOption} from './command.ts';
import {ruleChange, ruleOptions} from './rule-options.ts';
import {numberWord} from './words.ts';

const COLUMNS: Column<RuleUse>[] = [
  {head: 'rule', cell: ({rule}) => rule.code},
  {head: 'how often', cell: ({rule}) => (rule.off ? 'switched off' : shortInterval(rule))},
  {head: 'holds for', cell: ({lots}) => (lots.length > 2 ? `${lots.length} lots` : lots.join(' ') || '–')},
  {head: 'from', cell: ({origin}) => (origin === 'start value' ? '' : origin === 'own' ? 'own' : 'changed')},
];

export const command: Command = {
  declare(command) {
    command.argument(
      '[code]',
      'one rule in full (default: the rules that hold for living lots, and your own)',
    );
    ruleOptions(command)
      .option('--all', 'every rule, also those that hold for no living lot')
      .option('--task <task>', 'only rules of this task')
      .option('--try', 'what the rule, with what else is given here, would have asked for')
      .option('--days <n>', 'how many days back it is tried', numberWord, 31);
    examples(
      command,
      'rules',
      'rules --lot 26-031-A',
      'rules feed-lepidoptera',
      'rules feed-lepidoptera --try --every 3 --latest 4',
    );
  },
  async run(invocation, [code], options) {
    const desk = await openDesk(invocation);
    const {columns} = invocation;
    const task = textOption(options, 'task');
    if (code === undefined) {
      const found = await rules(desk, {lot: textOption(options, 'lot'), task, all: options.all === true});
      invocation.answer(found.map(answerOf), () =>
        found.length === 0 ? 'no rule holds for a living lot' : textTable(found, COLUMNS),
      );
    } else if (options.try === true) {
      const days = Number(options.days);
      const trials = await tryRule(desk, code, ruleChange(task, options), days);
      const {civil} = desk;
      const told = trials.map(({asked, done, ...trial}) => ({
        ...trial,
        asked: asked.map(civil.iso),
        done: done.map(civil.iso),
      }));
      invocation.answer({rule: code, days, trials: told}, () =>
        textOfLines(trialLines(trials, days, civil, columns)),
      );
    } else {
      const use = await ruleUse(desk, code);
      invocation.answer(
        answerOf(use),
        () => `${textOfLines(ruleLines(use, columns))}\n${howToChange(use.rule)}`,
      );
    }
  },
};

/** As it is now, to be written otherwise. */
function howToChange({code, task, every, amount}: Rule): string {
  const often = 'days' in every ? `--every ${every.days}` : `--every-degree-days ${every.degreeDays}`;
  const much = amount === undefined ? (task === 'feed' ? '1 prey each' : undefined) : howMuchText(amount);
  return ` change    teneral rule ${code} ${often}${much === undefined ? '' : ` --amount "${much}"`}, with figures of your own`;
}

function answerOf({rule, origin, lots}: RuleUse) {
  return {...rule, origin, lots};
}
