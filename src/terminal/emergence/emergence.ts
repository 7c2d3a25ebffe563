// Writing down adults that came out: few keys, one line an adult or several by a number, codes given at once.

import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {dayWords, instantWords} from '../../exchange/time-words.ts';
import {specimenCodes} from '../../records/specimen-codes.ts';
import {total} from '../../records/stage.ts';
import type {Binding} from '../bindings.ts';
import type {EmergenceSheet, Page, Room, SheetPart, Step, View} from '../sheet.ts';
import {
  codesOf,
  countOf,
  nextFate,
  parasitoidsIn,
  recordsOf,
  type Sex,
  takenBack,
  withAdults,
} from './form.ts';

type Key = Binding<EmergenceSheet, View, Step<EmergenceSheet>>;

const saved = ({saved}: EmergenceSheet) =>
  saved === undefined ? undefined : 'this is saved; escape leaves, u takes it back';

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
  fieldKey('x', 'exuviae', 'exuviae', 'code of the exuviae kept with it'),
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
    field === 'parasitoids' ? {...form, parasitoids: parasitoidsIn(text)} : {...form, [field]: text},
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
  return {effects: [{do: 'record', records, said, about: [form.lot], saves: codes}]};
}

/** "A-7", "A-7 to A-9" */
function rangeOf(codes: readonly string[]): string {
  return codes.length < 2 ? codes.join('') : `${codes[0]} to ${codes.at(-1)}`;
}

function drawForm(form: EmergenceSheet, view: View, room: Room): Page {
  const {desk} = view.facts;
  const {civil, now, state} = desk;
  const lot = state.lots.get(form.lot);
  const {dot} = view.glyphs;
  const codes = form.saved ?? codesOf(form, state);
  const since = lot?.lastLook ?? lot?.startedAt;
  const rows: Line[] = [];
  let given = 0;
  for (const {sex, count} of form.adults) {
    const own = rangeOf(codes.slice(given, given + count));
    given += count;
    rows.push([piece(` ${String(count).padStart(4)} ${sex.padEnd(8)}`, 'seen'), piece(` ${own}`)]);
  }
  const parasitoids = codes.slice(given);
  const more = (name: string, value: string | undefined): Line[] =>
    value === undefined ? [] : [[piece(` ${name.padEnd(13)} `, 'expected'), piece(value)]];
  const first =
    rows.length === 0 ? [line(' No adult yet: f, m or u for each, 3f for three females.', 'expected')] : [];
  const body = [
    ...more('found', dayWords(civil.dayOf(now), civil, now)),
    ...more('not yet out', since === undefined ? undefined : instantWords(since, civil, now)),
    [],
    ...first,
    ...rows,
    ...(form.number === '' ? [] : [line(` ${form.number.padStart(4)} _`, 'seen')]),
    [],
    ...more('fate', form.fate),
    ...more('as', form.subimago ? 'subimago' : undefined),
    ...more('condition', form.condition),
    ...more('exuviae', form.exuviae),
    ...more(
      'parasitoids',
      form.parasitoids === undefined
        ? undefined
        : `${form.parasitoids.count} ${form.parasitoids.taxon ?? ''} ${rangeOf(parasitoids)}`,
    ),
  ];
  const alive = lot === undefined ? 0 : total(lot.alive);
  const hidden = lot?.material !== undefined || lot?.counted === 'unknown';
  return {
    head: `adults of ${form.lot} ${dot} ${lot?.taxon ?? 'not yet identified'}`,
    aside: hidden ? 'number alive not known' : `${alive} alive, ${countOf(form)} come out`,
    body: body.slice(0, room.body),
    detail: [
      line(
        form.saved === undefined
          ? ' enter writes it down'
          : ' Written down. Label each specimen with its code now.',
        form.saved === undefined ? 'expected' : 'good',
      ),
      line(
        ' care   let adults harden before they are handled; keep exuviae and parasitoids with their codes',
      ),
    ],
  };
}
