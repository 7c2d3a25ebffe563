// What a lot may be: suggestions with their reasons beside the candidates it has, changed row by row and kept with enter.

import {Refusal} from '../../records/refusal.ts';
import {readClues} from '../../work/choice.ts';
import type {Binding} from '../bindings.ts';
import type {CandidatesSheet, SheetPart, Step, View} from '../sheet.ts';
import {
  choicesOf,
  cluesShown,
  draftOf,
  effectFor,
  keyOf,
  rowAt,
  rowsOf,
  suggestedDraft,
  withWeight,
} from './draft.ts';
import {drawCandidates} from './draw.ts';

type Key = Binding<CandidatesSheet, View, Step<CandidatesSheet>>;

/** How much a key adds to a weight. */
const STEP = 0.1;

const nothingHere = (sheet: CandidatesSheet, view: View) =>
  rowAt(sheet, view) === undefined ? 'there is no candidate to choose' : undefined;

const move = (strokes: readonly string[], by: number, short: string): Key => ({
  strokes,
  short,
  says: `one candidate ${by < 0 ? 'up' : 'down'}`,
  act: (sheet, view) => ({
    sheet: {...sheet, cursor: Math.max(0, Math.min(rowsOf(sheet, view).length - 1, sheet.cursor + by))},
  }),
});

const weigh = (strokes: readonly string[], by: number, short: string): Key => ({
  strokes,
  short,
  says: `${by < 0 ? 'less' : 'more'} weight for this candidate`,
  hint: true,
  disabled: nothingHere,
  act(sheet, view) {
    const row = rowAt(sheet, view)!;
    return {sheet: withWeight(sheet, view, row.profile, (row.weight ?? 0) + by)};
  },
});

const keys: readonly Key[] = [
  move(['up', 'k'], -1, 'up'),
  move(['down', 'j'], 1, 'down'),
  {
    strokes: [' '],
    short: 'take or leave',
    says: 'take this candidate as suggested, or leave it out',
    hint: true,
    disabled: nothingHere,
    act(sheet, view) {
      const {profile, weight, suggested} = rowAt(sheet, view)!;
      return {sheet: withWeight(sheet, view, profile, (weight ?? 0) > 0 ? 0 : (suggested ?? STEP))};
    },
  },
  weigh(['+', '='], STEP, 'more'),
  weigh(['-'], -STEP, 'less'),
  {
    strokes: ['s'],
    short: 'as suggested',
    says: 'take all candidates as they are suggested',
    hint: true,
    disabled: (sheet, view) =>
      choicesOf(sheet, view)?.length ? undefined : 'nothing is suggested: say more with t',
    act: (sheet, view) => ({sheet: {...sheet, draft: suggestedDraft(sheet, view), cursor: 0}}),
  },
  {
    strokes: ['t'],
    short: 'tell more',
    says: 'tell what more is known: sat=leaf length=18 host=… taxon=…',
    hint: true,
    act: sheet => ({
      ask: {
        kind: 'text',
        label: 'sat= length= host= taxon= stage= month=',
        text: sheet.told,
        purpose: {for: 'field', field: 'clues'},
      },
    }),
  },
  {
    strokes: ['a'],
    short: 'another',
    says: 'name another profile as a candidate by its code',
    act: () => ({
      ask: {kind: 'text', label: 'code of a profile', text: '', purpose: {for: 'field', field: 'profile'}},
    }),
  },
  {
    strokes: ['enter'],
    short: 'keep',
    says: 'give the lot these candidates',
    hint: true,
    disabled: (sheet, view) =>
      draftOf(sheet, view).some(({weight}) => weight > 0) ? undefined : 'no candidate has a weight',
    act: (sheet, view) => ({effects: [effectFor(sheet, view)]}),
  },
];

export const candidates: SheetPart<CandidatesSheet> = {
  title: 'what a lot may be',
  keys,
  filled(sheet, field, text) {
    if (field === 'profile')
      return {...sheet, added: [...sheet.added.filter(code => code !== text), text], fault: undefined};
    try {
      readClues(text);
      return {...sheet, told: text, fault: undefined, cursor: 0};
    } catch (error) {
      if (error instanceof Refusal) return {...sheet, fault: error.message};
      throw error;
    }
  },
  needs(sheet, view) {
    const key = keyOf(sheet, view);
    return key === undefined || view.choices.has(key)
      ? []
      : [{do: 'choices', key, clues: cluesShown(sheet, view)}];
  },
  draw: drawCandidates,
};

/** Opened from a lot. */
export function candidatesSheet(lot: string): CandidatesSheet {
  return {kind: 'candidates', lot, cursor: 0, told: '', draft: undefined, added: [], fault: undefined};
}
