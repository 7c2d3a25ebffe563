import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {holdingPlan} from '../work/holding-plan.ts';
import {holdingPlanAnswer, holdingPlanWords} from '../work/holding-plan-words.ts';
import {readWanted} from '../work/plan-question.ts';
import {type Command, examples, textOption} from './command.ts';
import {saidText} from './said-text.ts';
import {numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<lot>', 'the lot whose adults are wanted')
      .requiredOption('--adults-by <day>', 'the day, or the instant, by which they are to be out')
      .option('--share <share>', 'how many of those alive are to be out by then', numberWord, 0.5);
    examples(
      command,
      'plan 26-031-A --adults-by 2026-07-04',
      'plan 26-031-A --adults-by 2026-07-04T10:00 --share 0.95',
    );
  },
  async run(invocation, [lot = ''], options) {
    const desk = await openDesk(invocation);
    const written = textOption(options, 'adultsBy') ?? '';
    const wanted = readWanted(written, desk.civil);
    if (wanted === undefined)
      throw new Refusal(
        `"${written}" is no day`,
        '--adults-by',
        'Write it like 2026-07-04, or 2026-07-04T10:00.',
      );
    const share = typeof options.share === 'number' ? options.share : 0.5;
    const plan = await holdingPlan(desk, {lot, ...wanted, share});
    invocation.answer(holdingPlanAnswer(plan, desk), () =>
      saidText(holdingPlanWords(plan, desk), invocation.columns),
    );
  },
};
