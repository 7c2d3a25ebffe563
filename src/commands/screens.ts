// The screens, where a person sits at a terminal; the care list as text, where nobody does.
import {openDesk} from '../work/desk.ts';
import {today} from '../work/today.ts';
import {todayAnswer} from '../work/today-answer.ts';
import type {Invocation} from './command.ts';
import {todayText} from './today-text.ts';

export async function openScreens(invocation: Invocation): Promise<void> {
  const desk = await openDesk(invocation);
  const list = await today(desk);
  invocation.answer(todayAnswer(list, desk), () => todayText(list, desk, invocation.columns));
}
