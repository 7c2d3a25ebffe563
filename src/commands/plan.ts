import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {holdingPlan} from '../work/holding-plan.ts';
import {holdingPlanAnswer, holdingPlanWords} from '../work/holding-plan-words.ts';
import {lodgings} from '../work/lodging.ts';
import {lodgingAnswer, lodgingWords} from '../work/lodging-words.ts';
import {readWanted} from '../work/plan-question.ts';
import {type Command, examples, numberOption, textOption} from './command.ts';
import {declareNeeds, readNeeds} from './needs-options.ts';
import {saidText} from './said-text.ts';
import {numberWord} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .argument('<lot>', 'the lot whose adults are wanted, or that is to be housed')
      .option(
        '--adults-by <day>',
        'the day, or the instant, by which they are to be out; without it: where the lot can live',
      )
      .option('--profile <code>', 'of a lot to be opened: what it is')
      .option('--animals <n>', 'how many are to be housed (default: all alive)', numberWord)
      .option('--share <share>', 'how many of those alive are to be out by then', numberWord, 0.5);
    declareNeeds(command);
    examples(
      command,
      'plan 26-031-A --adults-by 2026-07-04',
      'plan 26-031-A --adults-by 2026-07-04T10:00 --share 0.95',
      'plan 26-040-A',
      'plan 26-041-A --profile plecoptera --animals 20 --warmest 12 --litres-each 0.5',
    );
  },
  async run(invocation, [lot = ''], options) {
    const desk = await openDesk(invocation);
    const written = textOption(options, 'adultsBy');
    if (written === undefined) {
      const animals = numberOption(options, 'animals');
      if (animals !== undefined && !(Number.isInteger(animals) && animals > 0))
        throw new Refusal(`${animals} is no number of animals`, '--animals', 'Write a whole number: 20.');
      const answer = await lodgings(desk, {
        lot,
        profile: textOption(options, 'profile'),
        animals,
        needs: readNeeds(options),
      });
      return invocation.answer(lodgingAnswer(answer, desk), () =>
        saidText(lodgingWords(answer, desk), invocation.columns),
      );
    }
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
