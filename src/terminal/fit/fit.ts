// Days at temperatures made into a profile of one's own: typed, from a table, or from lots; all models beside each other.
import type {RateModelKind} from '../../thermal/rate-model.ts';
import type {Fitting} from '../../work/fitting.ts';
import {typed} from '../ask/answering.ts';
import type {Binding} from '../bindings.ts';
import type {FitSheet, SheetPart, Step, View} from '../sheet.ts';
import {drawFit} from './draw.ts';

type Key = Binding<FitSheet, View, Step<FitSheet>>;
type Field = 'fit table' | 'fit lots' | 'fit profile' | 'fit name' | 'fit stage' | 'fit source';

export function fitSheet(known: Pick<FitSheet, 'profile' | 'stage'> = {}): FitSheet {
  return {kind: 'fit', of: {typed: []}, typing: '', cursor: 0, ...known};
}

const fieldKey = (stroke: string, field: Field, short: string, label: string): Key => ({
  strokes: [stroke],
  short,
  says: label,
  hint: true,
  act: sheet => ({ask: {kind: 'text', label, text: textOf(sheet, field), purpose: {for: 'field', field}}}),
});

const keys: readonly Key[] = [
  {
    strokes: ['enter'],
    short: 'take row',
    says: 'take what was typed, such as 15=55.6: °C, then days',
    hint: true,
    disabled: ({typing}) => (typing === '' ? 'type a row first, such as 15=55.6' : undefined),
    act: sheet => taken(sheet),
  },
  {
    strokes: ['delete'],
    short: 'take back',
    says: 'take the last character or row back',
    act: sheet =>
      sheet.typing === ''
        ? {sheet: {...sheet, of: {...sheet.of, typed: sheet.of.typed.slice(0, -1)}}}
        : {sheet: {...sheet, typing: typed(sheet.typing, 'delete')}},
  },
  fieldKey('o', 'fit table', 'table', 'a file with the columns temperature, days'),
  fieldKey('l', 'fit lots', 'lots', 'lots of this room, or the profile whose lots count'),
  {strokes: ['down'], short: 'model', says: 'the model below', hint: true, act: moved(1)},
  {strokes: ['up'], short: 'up', says: 'the model above', act: moved(-1)},
  fieldKey('t', 'fit stage', 'stage', 'the stage that the days are of'),
  fieldKey('p', 'fit profile', 'profile', 'code of the profile that keeps it'),
  fieldKey('n', 'fit name', 'name', 'what a new profile is of'),
  fieldKey('b', 'fit source', 'source', 'where the days come from'),
  {
    strokes: ['s'],
    short: 'save',
    says: 'keep the model under the cursor in the profile',
    hint: true,
    disabled: (sheet, view) => missing(sheet, view),
    act: sheet => ({
      effects: [
        {
          do: 'keep-fit',
          of: sourceOf(sheet),
          kept: {
            profile: sheet.profile!,
            name: sheet.name,
            kind: sheet.model,
            citation: sheet.source,
            sure: sheet.doubted === true,
          },
        },
      ],
    }),
  },
];

export const fit: SheetPart<FitSheet> = {
  title: 'days at temperatures',
  keys,
  type(sheet, stroke) {
    return /^[\d.,=-]$/.test(stroke) || (stroke === ' ' && sheet.typing !== '')
      ? {sheet: {...sheet, typing: (sheet.typing + (stroke === ' ' ? '=' : stroke)).slice(0, 20)}}
      : undefined;
  },
  filled: filledIn,
  needs: (sheet, {fits}) =>
    hasRows(sheet) && !fits.has(keyOf(sheet)) ? [{do: 'fit', key: keyOf(sheet), of: sourceOf(sheet)}] : [],
  draw: drawFit,
};

/** What the rows come from, with the stage that counts. */
function sourceOf({of, stage}: FitSheet): FitSheet['of'] {
  return {...of, stage};
}

export function keyOf(sheet: FitSheet): string {
  return JSON.stringify(sourceOf(sheet));
}

export function hasRows({of}: FitSheet): boolean {
  return of.file !== undefined || of.lots !== undefined || of.typed.length > 0;
}

/** What was made of the rows, once it is known. */
export function fittingOf(sheet: FitSheet, {fits}: View): Fitting | undefined {
  const found = fits.get(keyOf(sheet));
  return found !== undefined && 'value' in found ? found.value : undefined;
}

function taken(sheet: FitSheet): Step<FitSheet> {
  if (!/^-?\d+([.,]\d+)?=\d+([.,]\d+)?$/.test(sheet.typing))
    return {say: `"${sheet.typing}" is no row. Write °C, then days: 15=55.6.`};
  const of = {typed: [...sheet.of.typed, sheet.typing]};
  return {sheet: {...sheet, of, typing: '', cursor: 0, model: undefined, doubted: false}};
}

function moved(by: number) {
  return (sheet: FitSheet, view: View): Step<FitSheet> => {
    const models = fittingOf(sheet, view)?.compared ?? [];
    const cursor = Math.max(0, Math.min(models.length, sheet.cursor + by));
    return {sheet: {...sheet, cursor, model: cursor === 0 ? undefined : models[cursor - 1]?.model.kind}};
  };
}

function textOf(sheet: FitSheet, field: Field): string {
  const texts: Readonly<Record<Field, string | undefined>> = {
    'fit table': sheet.of.file,
    'fit lots': sheet.of.lots,
    'fit profile': sheet.profile,
    'fit name': sheet.name,
    'fit stage': sheet.stage,
    'fit source': sheet.source,
  };
  return texts[field] ?? '';
}

function filledIn(sheet: FitSheet, field: string, text: string): FitSheet {
  const begun: {readonly cursor: 0; readonly model: RateModelKind | undefined} = {
    cursor: 0,
    model: undefined,
  };
  switch (field) {
    case 'fit table':
      return {...sheet, ...begun, of: {typed: [], file: text}};
    case 'fit lots':
      return {...sheet, ...begun, of: {typed: [], lots: text}};
    case 'fit stage':
      return {...sheet, ...(sheet.of.typed.length > 0 ? {} : begun), stage: text};
    case 'fit profile':
      return {...sheet, profile: text};
    case 'fit name':
      return {...sheet, name: text};
    default:
      return {...sheet, source: text};
  }
}

/** Why it cannot be kept yet. */
function missing(sheet: FitSheet, view: View): string | undefined {
  if (fittingOf(sheet, view) === undefined)
    return 'there is no model yet: type days at two temperatures at least';
  if (sheet.stage === undefined) return 'the stage that the days are of is not said yet: press t';
  if (sheet.profile === undefined) return 'the profile that keeps it is not said yet: press p';
  if (sheet.source === undefined && sheet.of.lots === undefined)
    return 'where the days come from is not said yet: press b';
  return undefined;
}
