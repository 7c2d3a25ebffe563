// The candidates a lot shall have while they are being chosen: what it has, what is suggested, what was changed.
import type {Clues} from '../../development/choosing.ts';
import {heaviestFirst} from '../../records/candidates.ts';
import {type Choice, cluesOf, clueWords, readClues, revisionOf} from '../../work/choice.ts';
import type {CandidatesSheet, Effect, View} from '../sheet.ts';

export interface Row {
  readonly profile: string;
  /** As it would be kept; undefined where it is not chosen. */
  readonly weight: number | undefined;
  readonly suggested: number | undefined;
  readonly choice: Choice | undefined;
}

type Draft = readonly {readonly profile: string; readonly weight: number}[];

/** What is recorded of the lot, and over it what was told here. */
export function cluesShown({lot, told}: CandidatesSheet, {facts: {desk}}: View): Clues {
  const known = desk.state.lots.get(lot);
  return {...(known === undefined ? {} : cluesOf(known, desk)), ...(told === '' ? {} : readClues(told))};
}

/** Under which the suggestions are loaded; undefined for a lot that is not there. */
export function keyOf(sheet: CandidatesSheet, view: View): string | undefined {
  return view.facts.desk.state.lots.has(sheet.lot) ? `${sheet.lot} ${sheet.told}` : undefined;
}

/** Undefined while they are being looked up, or where they could not be. */
export function choicesOf(sheet: CandidatesSheet, view: View): readonly Choice[] | undefined {
  const loaded = view.choices.get(keyOf(sheet, view) ?? '');
  return loaded !== undefined && 'value' in loaded ? loaded.value : undefined;
}

/** What was changed here, else what the lot has, else what is suggested. */
export function draftOf(sheet: CandidatesSheet, view: View): Draft {
  if (sheet.draft !== undefined) return sheet.draft;
  const has = candidatesOf(sheet, view);
  return has.length > 0 ? has : suggestedDraft(sheet, view);
}

/** What the lot has as it stands. */
function candidatesOf({lot}: CandidatesSheet, {facts: {desk}}: View): Draft {
  return desk.state.lots.get(lot)?.candidates ?? [];
}

export function suggestedDraft(sheet: CandidatesSheet, view: View): Draft {
  return (choicesOf(sheet, view) ?? []).map(({profile, weight}) => ({
    profile,
    weight: Number(weight.toFixed(2)),
  }));
}

/** Suggestions first, then what else the lot has or somebody named. */
export function rowsOf(sheet: CandidatesSheet, view: View): readonly Row[] {
  const draft = draftOf(sheet, view);
  const choices = choicesOf(sheet, view) ?? [];
  const has = candidatesOf(sheet, view);
  const codes = new Set([
    ...choices.map(({profile}) => profile),
    ...has.map(({profile}) => profile),
    ...draft.map(({profile}) => profile),
    ...sheet.added,
  ]);
  return [...codes].map(profile => {
    const choice = choices.find(each => each.profile === profile);
    const weight = draft.find(each => each.profile === profile)?.weight;
    return {profile, weight, suggested: choice?.weight, choice};
  });
}

export function rowAt(sheet: CandidatesSheet, view: View): Row | undefined {
  return rowsOf(sheet, view)[sheet.cursor];
}

export function withWeight(
  sheet: CandidatesSheet,
  view: View,
  profile: string,
  weight: number,
): CandidatesSheet {
  const others = draftOf(sheet, view).filter(each => each.profile !== profile);
  const rounded = Number(Math.max(0, Math.min(1, weight)).toFixed(2));
  return {...sheet, draft: rounded === 0 ? others : [...others, {profile, weight: rounded}]};
}

export function effectFor(sheet: CandidatesSheet, view: View): Effect {
  const chosen = heaviestFirst(draftOf(sheet, view).filter(({weight}) => weight > 0));
  return {
    do: 'record',
    records: [revisionOf(sheet.lot, chosen, clueWords(sheet.told === '' ? {} : readClues(sheet.told)))],
    said: `${sheet.lot} may be ${chosen.map(({profile}) => profile).join(', ')}`,
    about: [sheet.lot],
  };
}
