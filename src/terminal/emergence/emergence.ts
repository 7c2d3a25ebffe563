// Writing down adults that came out: few keys, one line an adult or several by a number, codes given at once.
import type {AskingChoice, AskingText, FieldName} from '../ask/asking.ts';
import type {Binding} from '../bindings.ts';
import type {EmergenceSheet, SheetPart, Step, View} from '../sheet.ts';
import {drawForm} from './draw.ts';
import {
  asParasitoids,
  codesIn,
  codesOf,
  countOf,
  exuviaeIn,
  namesOf,
  nextConditionOfLast,
  nextFate,
  nextFateOfLast,
  parasitoidsIn,
  partToggled,
  rangeOf,
  recordsOf,
  type Sex,
  takenBack,
  withAdults,
} from './form.ts';

type FormField = Extract<
  FieldName,
  'animal' | 'name' | 'code' | 'when' | 'condition' | 'exuviae' | 'parasitoids'
>;
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
  field: FormField,
  short: string,
  label: string,
  hint = false,
  offered: (form: EmergenceSheet, view: View) => string = () => '',
): Key => ({
  strokes: [stroke],
  short,
  says: label,
  hint,
  disabled: saved,
  act: (form, view) => ({ask: asked(field, label, offered(form, view))}),
});

const asked = (field: FormField, label: string, text = ''): AskingText => ({
  ...{kind: 'text', label, text},
  purpose: {for: 'field', field},
});

const partKey = (stroke: string, part: 'remains' | 'cocoon', says: string): Key => ({
  strokes: [stroke],
  short: part,
  says,
  disabled: form =>
    saved(form) ?? (form.parasitoids === undefined ? 'p tells first what came out of the host' : undefined),
  act: (form, {facts}) => ({sheet: partToggled(form, part, facts.desk.state)}),
});

const NAME = 'what it is called';

const keys: readonly Key[] = [
  sexKey('f', 'female', 'female'),
  sexKey('m', 'male', 'male'),
  sexKey('u', 'unknown', 'unknown'),
  fieldKey('n', 'animal', 'animal', 'number of the one animal, where it was followed by itself', true),
  fieldKey('i', 'name', 'name', NAME, true),
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
  fieldKey(
    ...(['x', 'exuviae', 'skin', 'vial: exuviae or puparium, its code, 1 same animal … 4 assumed'] as const),
    true,
    skinOfOne,
  ),
  fieldKey('p', 'parasitoids', 'parasitoids', 'parasitoids out of one host: a number, then a name', true),
  partKey('r', 'remains', 'keep what is left of the host with its parasitoids, or not'),
  partKey('o', 'cocoon', 'keep their cocoon with the parasitoids, or not'),
  fieldKey('c', 'condition', 'condition', 'condition of the adults'),
  fieldKey('k', 'code', 'own code', 'code for the first, in place of the one that is given'),
  fieldKey('w', 'when', 'when', 'when they were found: 2026-06-12T06:40'),
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
  {
    strokes: ['tab'],
    short: 'to the threads',
    says: 'nothing here: what was entered would be lost',
    disabled: () => 'enter writes this down, escape leaves it',
    act: () => ({}),
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
  filled: (form, field, text) => ({...form, ...filledIn(field, text), doubted: false}),
  chosen,
  draw: drawForm,
};

/** The skin of one animal goes by its specimen's code. */
function skinOfOne(form: EmergenceSheet, {facts}: View): string {
  const [code, ...others] = codesOf(form, facts.desk.state);
  return form.animal === undefined || code === undefined || others.length > 0 ? '' : `${code}a 1`;
}

function filledIn(field: FieldName, text: string): Partial<EmergenceSheet> {
  switch (field) {
    case 'parasitoids':
      return {parasitoids: parasitoidsIn(text)};
    case 'exuviae':
      return {exuviae: exuviaeIn(text)};
    case 'animal':
      return {animal: text};
    case 'name':
      return {taxon: text};
    case 'code':
      return {code: text};
    case 'when':
      return {at: text.replace(' ', 'T')};
    default:
      return {condition: text};
  }
}

/** What they are was asked, because they are many out of one animal or bear a name of another order. */
function chosen(form: EmergenceSheet, key: string): Step<EmergenceSheet> {
  switch (key) {
    case 'y':
    case 'p':
      return {sheet: asParasitoids(form)};
    case 't':
      return {sheet: asParasitoids(form, true)};
    case 's':
      return {sheet: {...form, scavengers: true, animal: undefined, doubted: false}};
    case 'm':
      return {ask: asked('name', NAME), sheet: {...form, taxon: undefined, doubted: false}};
    default:
      return {sheet: {...form, adults: form.adults.slice(0, -1)}, say: 'The last line is taken back.'};
  }
}

function save(form: EmergenceSheet, {facts: {desk}}: View): Step<EmergenceSheet> {
  if (form.saved !== undefined) return {back: true};
  const {lot, animal, scavengers} = form;
  const count = countOf(form);
  if (animal !== undefined && count > 1 && !scavengers) return {ask: manyFromOne(count)};
  const records = recordsOf(form, desk.state);
  if (records.length === 0) {
    const record = {record: 'check', lot, animal, at: form.at, found: 0};
    return {
      back: true,
      effects: [{do: 'record', records: [record], said: `${lot}: looked, none was out`, about: [lot]}],
    };
  }
  const codes = codesOf(form, desk.state);
  const ranges = records.map(record => rangeOf(codesIn(record, desk.state)));
  const said = `${ranges.join(' and ')} written down`;
  const [first, ...others] = records;
  const named =
    first?.record === 'emergence' && form.taxon !== undefined
      ? // Whoever names them must know their codes.
        [{...first, codes: codes.slice(0, count)}, ...others, ...namesOf(form, codes.slice(0, count))]
      : records;
  const sure = form.doubted ? {sure: true} : {};
  const written = named.map(record => ({...record, ...sure}));
  return {effects: [{do: 'record', records: written, said, about: [lot], saves: codes}]};
}

function manyFromOne(count: number): AskingChoice {
  return {
    kind: 'choice',
    question: `${count} from one host: parasitoid?`,
    choices: [
      {key: 'y', word: 'yes'},
      {key: 't', word: 'yes, together in one vial'},
      {key: 'n', word: 'no'},
    ],
  };
}
