// Writing down adults that came out: few keys, one line an adult or several by a number, codes given at once.
import {specimenCodes} from '../../records/specimen-codes.ts';
import type {Binding} from '../bindings.ts';
import type {EmergenceSheet, SheetPart, Step, View} from '../sheet.ts';
import {drawForm} from './draw.ts';
import {
  codesOf,
  exuviaeIn,
  nextConditionOfLast,
  nextFate,
  nextFateOfLast,
  parasitoidsIn,
  rangeOf,
  recordsOf,
  type Sex,
  takenBack,
  withAdults,
} from './form.ts';

type Key = Binding<EmergenceSheet, View, Step<EmergenceSheet>>;

const saved = ({saved}: EmergenceSheet) =>
  saved === undefined ? undefined : 'this is saved; escape leaves, u takes it back';

const noLine = ({adults}: EmergenceSheet) =>
  adults.length === 0 ? 'there is no line yet: f, m or u first' : undefined;

const sexKey = (stroke: string, sex: Sex, short: string): Key => ({
  strokes: [stroke],
  short,
  says: `one more ${sex === 'unknown' ? 'adult whose sex is not known' : sex}; type a number first for several`,
  hint: true,
  disabled: saved,
  act: form => ({sheet: withAdults(form, sex)}),
});

const fieldKey = (
  stroke: string,
  field: 'condition' | 'exuviae' | 'parasitoids',
  short: string,
  label: string,
): Key => ({
  strokes: [stroke],
  short,
  says: label,
  hint: true,
  disabled: saved,
  act: () => ({ask: {kind: 'text', label, text: '', purpose: {for: 'field', field}}}),
});

const keys: readonly Key[] = [
  sexKey('f', 'female', 'female'),
  sexKey('m', 'male', 'male'),
  sexKey('u', 'unknown', 'unknown'),
  {
    strokes: ['t'],
    short: 'fate',
    says: 'kept, killed, released or dead',
    hint: true,
    disabled: saved,
    act: form => ({sheet: nextFate(form)}),
  },
  {
    strokes: ['s'],
    short: 'subimago',
    says: 'a mayfly’s first winged form',
    disabled: saved,
    act: form => ({sheet: {...form, subimago: !form.subimago}}),
  },
  {
    strokes: ['d'],
    short: 'badly',
    says: 'the last line: deformed, battered, drowned, half out, or well',
    hint: true,
    disabled: form => saved(form) ?? noLine(form),
    act: form => ({sheet: nextConditionOfLast(form)}),
  },
  {
    strokes: ['a'],
    short: 'its fate',
    says: 'the fate of the last line alone, where it is not that of the others',
    disabled: form => saved(form) ?? noLine(form),
    act: form => ({sheet: nextFateOfLast(form)}),
  },
  fieldKey('x', 'exuviae', 'exuviae', 'vial: exuviae or puparium, its code, 1 same animal … 4 assumed'),
  fieldKey('p', 'parasitoids', 'parasitoids', 'parasitoids out of one host: a number, then a name'),
  fieldKey('c', 'condition', 'condition', 'condition of the adults'),
  {
    strokes: ['delete'],
    short: 'take back',
    says: 'take the last line back',
    disabled: saved,
    act: form => ({sheet: takenBack(form)}),
  },
  {
    strokes: ['enter'],
    short: 'save',
    says: 'write it down; with no line it is a look that found none',
    hint: true,
    act: save,
  },
];

export const emergence: SheetPart<EmergenceSheet> = {
  title: 'adults that came out',
  keys,
  type(form, stroke) {
    if (form.saved === undefined)
      return /^\d$/.test(stroke) ? {sheet: {...form, number: (form.number + stroke).slice(0, 4)}} : undefined;
    return stroke === 'u' ? {back: true, effects: [{do: 'undo'}]} : undefined;
  },
  filled: (form, field, text) =>
    field === 'parasitoids'
      ? {...form, parasitoids: parasitoidsIn(text)}
      : field === 'exuviae'
        ? {...form, exuviae: exuviaeIn(text)}
        : {...form, condition: text},
  draw: drawForm,
};

function save(form: EmergenceSheet, {facts: {desk}}: View): Step<EmergenceSheet> {
  if (form.saved !== undefined) return {back: true};
  const records = recordsOf(form);
  if (records.length === 0) {
    const record = {record: 'check', lot: form.lot, found: 0};
    return {
      back: true,
      effects: [
        {do: 'record', records: [record], said: `${form.lot}: looked, none was out`, about: [form.lot]},
      ],
    };
  }
  const codes = codesOf(form, desk.state);
  const ranges = records.map(record =>
    rangeOf(specimenCodes(record, code => desk.state.specimens.has(code))),
  );
  const said = `${ranges.join(' and ')} written down`;
  const sure = form.doubted ? {sure: true} : {};
  const written = records.map(record => ({...record, ...sure}));
  return {effects: [{do: 'record', records: written, said, about: [form.lot], saves: codes}]};
}
