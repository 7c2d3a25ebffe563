// The words of the pages that are worked out only when they are looked at.
import {monthLines, weekLines} from '../../exchange/pictures/agenda.ts';
import {foodLines} from '../../exchange/pictures/food.ts';
import type {Glyphs} from '../../exchange/pictures/glyphs.ts';
import type {Line} from '../../exchange/pictures/line.ts';
import {trialLines} from '../../exchange/pictures/rules.ts';
import {ahead} from '../../work/ahead.ts';
import type {Desk} from '../../work/desk.ts';
import {foodOfDays} from '../../work/food-ahead.ts';
import {handover} from '../../work/handover.ts';
import {handoverLines} from '../../work/handover-words.ts';
import {tryRule} from '../../work/rules.ts';
import {waiting} from '../../work/waiting.ts';
import {waitingLines} from '../../work/waiting-words.ts';
import type {TextTopic} from '../sheet.ts';

const WEEK = 7;
const MONTH = 31;

export async function textOf(
  topic: TextTopic,
  desk: Desk,
  glyphs: Glyphs,
  columns: number,
): Promise<readonly Line[]> {
  const {civil} = desk;
  if (typeof topic === 'object')
    return trialLines(await tryRule(desk, topic.rule, {}, MONTH), MONTH, civil, columns);
  switch (topic) {
    case 'week':
      return week(desk, glyphs, columns);
    case 'month':
      return monthLines((await ahead(desk, MONTH)).days, civil, glyphs);
    case 'wait':
      return waitingLines(await waiting(desk), civil, columns);
    case 'handover':
      return handoverLines(await handover(desk), civil, columns);
  }
}

/** What is done on each day, and below it the food that this takes. */
async function week(desk: Desk, glyphs: Glyphs, columns: number): Promise<readonly Line[]> {
  const {civil} = desk;
  const plan = await ahead(desk, WEEK);
  const days = plan.days.map(({day}) => day);
  const foods = foodLines(await foodOfDays(desk, plan), days, civil, columns);
  return [...weekLines(plan.days, civil, glyphs, columns), ...(foods.length === 0 ? [] : [[], ...foods])];
}
