// Answers in words to what a keeper asks of a lot or of the room, for the screens.
import type {Desk} from './desk.ts';
import {forecastSaid} from './forecast-said.ts';
import {holdingPlan, NoForecast, type PlanQuestion} from './holding-plan.ts';
import {holdingPlanWords} from './holding-plan-words.ts';
import {lodgings} from './lodging.ts';
import {lodgingWords} from './lodging-words.ts';
import {outlooks} from './outlook.ts';
import {review} from './review.ts';
import {reviewWords} from './review-words.ts';
import type {SaidLines} from './said-lines.ts';
import {why} from './why.ts';
import {whyWords} from './why-words.ts';

export type Question =
  | {readonly ask: 'why'; readonly lot: string}
  | {readonly ask: 'hold'; readonly lot: string; readonly holdC: number}
  | ({readonly ask: 'plan'} & PlanQuestion)
  | {readonly ask: 'review'};

/**
 * @param desk with everything archived for a review
 * @throws Refusal where it cannot be answered
 */
export async function saidAnswer(desk: Desk, question: Question): Promise<SaidLines> {
  switch (question.ask) {
    case 'why':
      return whyWords(await why(desk, question), desk);
    case 'hold': {
      const {lot, holdC} = question;
      const [outlook] = await outlooks(desk, {codes: [lot], holdC});
      const said = forecastSaid(outlook!, desk);
      return {...said, title: `${said.title} · as if held at ${holdC} °C`};
    }
    case 'plan':
      return planSaid(desk, question);
    case 'review':
      return reviewWords(await review(desk), desk);
  }
}

/** The plan for the day and where the lot can live; the latter alone where there is no forecast to plan by. */
async function planSaid(desk: Desk, question: Extract<Question, {ask: 'plan'}>): Promise<SaidLines> {
  const lodging = await lodgings(desk, question);
  const where = lodgingWords(lodging, desk);
  try {
    const plan = holdingPlanWords(await holdingPlan(desk, question), desk);
    // The plan has judged every unit, by food too; where to live is only open where none takes the lot today.
    if (lodging.whole.some(({from}) => from <= desk.now)) return plan;
    return {...plan, lines: [...plan.lines, ['', ''], ['where', 'it can live:'], ...where.lines]};
  } catch (error) {
    if (!(error instanceof NoForecast)) throw error;
    return {...where, lines: [['no dates', error.mend], ...where.lines]};
  }
}
