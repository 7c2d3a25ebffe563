// The keys by which a lot is asked about: why, another temperature, a day to plan for, how earlier forecasts did.
import {readWanted} from '../../work/plan-question.ts';
import type {Question} from '../../work/said-answer.ts';
import type {Binding} from '../bindings.ts';
import type {Sheet, SheetOf, Step, View} from '../sheet.ts';

/**
 * @param lotOf the lot that is meant; undefined where there is none
 * @param hint whether all of them stand in the bottom line, or only the first
 */
export function askKeys<Own extends Sheet>(
  lotOf: (sheet: Own, view: View) => string | undefined,
  hint: boolean,
): Binding<Own, View, Step<Own>>[] {
  const disabled = (sheet: Own, view: View) => {
    const code = lotOf(sheet, view);
    const lot = code === undefined ? undefined : view.facts.desk.state.lots.get(code);
    if (lot === undefined) return 'there is no open lot here';
    return lot.closed === undefined ? undefined : 'this lot is closed';
  };
  return [
    {
      strokes: ['w'],
      short: 'why',
      says: 'why its forecast says what it says, and what would narrow it',
      hint: true,
      disabled,
      act: (sheet, view) => ({open: answerSheet({ask: 'why', lot: lotOf(sheet, view)!})}),
    },
    {
      strokes: ['h'],
      short: 'hold',
      says: 'its forecast as if it were held at another temperature',
      hint,
      disabled,
      act: (sheet, view) => ({
        ask: {
          kind: 'text',
          label: 'as if held at °C',
          text: '',
          purpose: {for: 'hold', lot: lotOf(sheet, view)!},
        },
      }),
    },
    {
      strokes: ['p'],
      short: 'plan',
      says: 'the temperature and the unit that bring its adults out by a day',
      hint,
      disabled,
      act: (sheet, view) => ({
        ask: {
          kind: 'text',
          label: 'out by (2026-07-04 10:00, or days from now; perhaps 95 %)',
          text: '',
          purpose: {for: 'plan', lot: lotOf(sheet, view)!},
        },
      }),
    },
    {
      strokes: ['r'],
      short: 'looking back',
      says: 'how good the forecasts of finished lots were, and what they taught',
      act: () => ({open: answerSheet({ask: 'review'})}),
    },
  ];
}

export function answerSheet(of: Question): SheetOf<'answer'> {
  return {kind: 'answer', of, scroll: 0};
}

/** A temperature was typed. */
export function heldAt(lot: string, text: string): Step<Sheet> {
  const holdC = Number(text.replace(',', '.').replace(/\s*°?C$/i, ''));
  if (!Number.isFinite(holdC)) return {say: `"${text}" is no temperature. Write °C: 22.5.`};
  return {open: answerSheet({ask: 'hold', lot, holdC})};
}

/** By when was typed, as a day, an instant or days from now; then perhaps how many of them. */
export function plannedBy(lot: string, text: string, {facts: {desk, today}}: View): Step<Sheet> {
  const [, written = '', percent] = /^(.*?),?(?:\s+(\d{1,2})\s*%)?$/.exec(text.trim()) ?? [];
  const ahead = /^\d{1,3}$/.test(written) ? Number(written) : undefined;
  const wanted =
    ahead === undefined ? readWanted(written, desk.civil) : {adultsBy: desk.civil.addDays(today.day, ahead)};
  if (wanted === undefined)
    return {say: `"${written}" is no day. Write it like 2026-07-04, or how many days from now.`};
  const share = percent === undefined ? 0.5 : Number(percent) / 100;
  return {open: answerSheet({ask: 'plan', lot, ...wanted, share})};
}
