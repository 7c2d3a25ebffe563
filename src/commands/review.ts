import {readDay} from '../exchange/instants.ts';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {review} from '../work/review.ts';
import {reviewAnswer, reviewWords} from '../work/review-words.ts';
import {type Command, examples, textOption} from './command.ts';
import {saidText} from './said-text.ts';

export const command: Command = {
  declare(command) {
    command.option('--since <day>', 'only lots finished on this day or later');
    examples(command, 'review', 'review --since 2026-01-01 --json');
  },
  async run(invocation, _, options) {
    const desk = await openDesk(invocation, 'all');
    const written = textOption(options, 'since');
    const since = written === undefined ? undefined : readDay(written);
    if (written !== undefined && since === undefined)
      throw new Refusal(`"${written}" is no day`, '--since', 'Write it like 2026-01-31.');
    const looked = await review(desk, since);
    invocation.answer(reviewAnswer(looked, desk), () =>
      saidText(reviewWords(looked, desk), invocation.columns),
    );
  },
};
