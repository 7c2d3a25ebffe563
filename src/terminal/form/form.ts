// A form: a line a field. Typing fills the field under the cursor, left and right choose, enter writes all of it down.
import {faultInWords, Refusal} from '../../records/refusal.ts';
import {STRANGERS} from '../../work/not-its-own.ts';
import {typed} from '../ask/answering.ts';
import type {Effect, FormSheet, SheetPart, Step, View} from '../sheet.ts';
import {isCharacter, type Stroke} from '../strokes.ts';
import {drawForm} from './draw.ts';
import {type Field, type Form, type Values, valueIn} from './field.ts';
import {type FormName, forms} from './forms.ts';

export function formSheet(form: FormName, about: string): FormSheet {
  return {kind: 'form', form, about, values: {}, cursor: 0, doubted: false};
}

export const form: SheetPart<FormSheet> = {
  title: 'a form',
  keys: [
    {strokes: ['enter'], short: 'save', says: 'write it down', hint: true, act: save},
    {strokes: ['down', 'tab'], short: 'next', says: 'the next field', hint: true, act: moved(1)},
    {strokes: ['up', 'back-tab'], short: 'before', says: 'the field before', act: moved(-1)},
    {strokes: ['right'], short: 'choose', says: 'the next choice', hint: true, act: chosen(1)},
    {strokes: ['left'], short: 'choose', says: 'the choice before', act: chosen(-1)},
    {
      strokes: ['delete'],
      short: 'take back',
      says: 'take the last character back',
      act: sheet => ({sheet}),
    },
  ],
  typedInto: true,
  type: typeInto,
  chosen: whatItIs,
  draw: drawForm,
};

/** The fields of the form as it is filled in now. */
export function fieldsOf({form: name, about, values}: FormSheet, view: View): readonly Field[] {
  return forms[name].fields(about, view, values);
}

function typeInto(sheet: FormSheet, stroke: Stroke, view: View): Step<FormSheet> | undefined {
  if (stroke !== 'delete' && !isCharacter(stroke)) return undefined;
  const field = fieldsOf(sheet, view)[sheet.cursor];
  if (field === undefined) return {sheet};
  if (field.choices === undefined)
    return {sheet: put(sheet, field, typed(valueIn(field, sheet.values), stroke))};
  const from = field.choices.indexOf(valueIn(field, sheet.values)) + 1;
  const around = [...field.choices.slice(from), ...field.choices.slice(0, from)];
  const begins = around.find(choice => choice.toLowerCase().startsWith(stroke.toLowerCase()));
  if (stroke === 'delete')
    return {sheet: put(sheet, field, field.choices.includes('') ? '' : field.choices[0]!)};
  return begins === undefined ? chosen(1)(sheet, view) : {sheet: put(sheet, field, begins)};
}

/** What is changed is no longer what somebody was asked to confirm. */
function put(sheet: FormSheet, {name}: Field, value: string): FormSheet {
  return {...sheet, values: {...sheet.values, [name]: value}, doubted: false};
}

function moved(by: number) {
  return (sheet: FormSheet, view: View): Step<FormSheet> => {
    const count = fieldsOf(sheet, view).length;
    return {sheet: {...sheet, cursor: (sheet.cursor + by + count) % count}};
  };
}

function chosen(by: number) {
  return (sheet: FormSheet, view: View): Step<FormSheet> => {
    const field = fieldsOf(sheet, view)[sheet.cursor];
    const choices = field?.choices ?? [];
    if (field === undefined || choices.length === 0) return {sheet};
    const at = choices.indexOf(valueIn(field, sheet.values));
    const next = at < 0 ? (by > 0 ? 0 : choices.length - 1) : (at + by + choices.length) % choices.length;
    return {sheet: put(sheet, field, choices[next]!)};
  };
}

/** A name was none of its lot's order, and what it is was asked: that is written down with it, or the name corrected. */
function whatItIs(sheet: FormSheet, key: string, view: View): Step<FormSheet> {
  const as = STRANGERS.find(stranger => stranger.startsWith(key));
  if (as === undefined) return {sheet: {...sheet, cursor: 0, doubted: false}};
  return save({...sheet, values: {...sheet.values, as}, doubted: false}, view);
}

/** Enter a second time, after a doubt was told, confirms what stands there. */
function save(sheet: FormSheet, view: View): Step<FormSheet> {
  const fields = fieldsOf(sheet, view);
  const values: Values = Object.fromEntries(fields.map(field => [field.name, valueIn(field, sheet.values)]));
  const missing = fields.findIndex(field => field.required === true && valueIn(field, values).trim() === '');
  if (missing >= 0)
    return {sheet: {...sheet, cursor: missing}, say: `${fields[missing]!.label} is still to be given.`};
  try {
    return {sheet: {...sheet, values: {...sheet.values}}, effects: [effectOf(sheet, values, view)]};
  } catch (error) {
    if (error instanceof Refusal) return {say: faultInWords(error)};
    throw error;
  }
}

function effectOf({form: name, about, doubted}: FormSheet, values: Values, view: View): Effect {
  const {records, effect, said}: Form = forms[name];
  const sure = doubted ? {sure: true} : {};
  if (effect !== undefined) return {...effect(values), ...sure, said: said(about, values)};
  return {
    do: 'record',
    records: records(about, values, view).map(record => ({...record, ...sure})),
    said: said(about, values),
    about: [about],
    closes: true,
  };
}
