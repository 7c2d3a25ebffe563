// What a form is made of: fields with what may stand in them, and the records that they become.
import type {Effect, View} from '../sheet.ts';

/** What was typed or chosen, by the name of the field; text always, as it stands on the screen. */
export type Values = Readonly<Record<string, string>>;

export interface Field {
  readonly name: string;
  readonly label: string;
  /** How it is written, shown beside the field under the cursor. */
  readonly help?: string;
  /** Left and right choose among these; nothing else may stand there. */
  readonly choices?: readonly string[];
  readonly required?: true;
  /** What stands there at first. */
  readonly preset?: string;
}

export interface Form {
  /** After the code it is about: "count the animals of 26-022-A". */
  title(about: string): string;
  /** The fields in their order; what is chosen in one may bring others. */
  fields(about: string, view: View, values: Values): readonly Field[];
  /** What is to be minded, in lines. */
  hints?(about: string, view: View, values: Values): readonly string[];
  /** What is written down, as JSON would hold it. What is wrong with it is said by the rules of the records. */
  records(about: string, values: Values, view: View): readonly object[];
  /** Work that is more than writing records down. */
  effect?(values: Values): Omit<Extract<Effect, {do: 'correct'}>, 'said'>;
  said(about: string, values: Values): string;
}

/** What is typed or chosen, else what stands there at first. */
export function valueIn(field: Field, values: Values): string {
  return values[field.name] ?? field.preset ?? '';
}

/** Text that is given; undefined where the field is empty. */
export function text(value: string | undefined): string | undefined {
  return value === undefined || value.trim() === '' ? undefined : value.trim();
}

/** A number with point or comma; what is none stays as it was typed, so that the refusal shows it. */
export function number(value: string | undefined): number | string | undefined {
  const given = text(value);
  if (given === undefined) return undefined;
  const read = Number(given.replace(',', '.'));
  return Number.isFinite(read) ? read : given;
}

/** "larva-5=15 pupa=8" as counts by stage. */
export function stages(value: string | undefined): Record<string, unknown> | undefined {
  const words = text(value)?.split(/[\s,]+/u);
  if (words === undefined) return undefined;
  return Object.fromEntries(
    words.map(word => {
      const [stage = '', count = '1'] = word.split('=');
      return [stage, number(count)];
    }),
  );
}

/** "pieris-rapae=0.7 lepidoptera=0.3" as candidates with weights. */
export function candidates(value: string | undefined): object[] | undefined {
  return text(value)
    ?.split(/[\s,]+/u)
    .map(word => {
      const [profile = '', weight = '1'] = word.split('=');
      return {profile, weight: number(weight)};
    });
}

/** "litresEach=0.5 warmestC=12 aerated=yes" as what animals need of their unit. */
export function needs(value: string | undefined): Record<string, unknown> | undefined {
  const words = text(value)?.split(/\s+/u);
  if (words === undefined) return undefined;
  return Object.fromEntries(
    words.map(word => {
      const [name = '', said = ''] = word.split('=');
      return [name, said === 'yes' || said === 'no' ? said === 'yes' : number(said)];
    }),
  );
}

export const needsField: Field = {
  name: 'needs',
  label: 'they need',
  help: 'warmestC=12 litresEach=0.5 aerated=yes; empty: as its profile says',
};

export function yes(value: string | undefined): true | undefined {
  return value === 'yes' ? true : undefined;
}

/** The fields that have a value. */
export function given(fields: Readonly<Record<string, unknown>>): Record<string, unknown> {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}

/** Given, or undefined where nothing in it is. */
export function givenOrNothing(fields: Readonly<Record<string, unknown>>): object | undefined {
  const some = given(fields);
  return Object.keys(some).length === 0 ? undefined : some;
}
