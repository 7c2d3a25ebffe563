// Answers in words to what a keeper asks of a lot or of the room, for the screens.
import type {Desk} from './desk.ts';
import {forecastSaid} from './forecast-said.ts';
import {holdingPlan, type PlanQuestion} from './holding-plan.ts';
import {holdingPlanWords} from './holding-plan-words.ts';
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
      return holdingPlanWords(await holdingPlan(desk, question), desk);
    case 'review':
      return reviewWords(await review(desk), desk);
  }
}
