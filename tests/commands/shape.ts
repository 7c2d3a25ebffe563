// The form of an answer: which fields it has and what kind of thing stands in each. Fields beyond those named are fine.

/** `text`, `number`, `whole`, `yes-no`, `instant` and `day`, with `?` where it may be null; a list of one form; or fields. */
export type Form = string | readonly [Form] | {readonly [field: string]: Form};

const INSTANT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}(\.\d+)?[+-]\d{2}:\d{2}$/;

const kinds: Readonly<Record<string, (value: unknown) => boolean>> = {
  text: value => typeof value === 'string',
  number: value => typeof value === 'number' && Number.isFinite(value),
  whole: value => Number.isInteger(value),
  'yes-no': value => typeof value === 'boolean',
  instant: value => typeof value === 'string' && INSTANT.test(value),
  day: value => typeof value === 'string' && /^\d{4}-\d{2}-\d{2}$/.test(value),
};

/** Everything about a value that is not of the form, each with its place; a list must hold something to be looked at. */
export function misfits(value: unknown, form: Form, place = 'answer'): string[] {
  if (typeof form === 'string') {
    if (form.endsWith('?') && value === null) return [];
    const kind = kinds[form.replace('?', '')];
    return kind?.(value) ? [] : [`${place} is ${JSON.stringify(value)}, which is no ${form}`];
  }
  if (isListForm(form)) {
    if (!Array.isArray(value) || value.length === 0) return [`${place} is no list, or empty`];
    return value.flatMap((each, i) => misfits(each, form[0], `${place}[${i}]`));
  }
  if (typeof value !== 'object' || value === null) return [`${place} is ${JSON.stringify(value)}`];
  const fields = new Map(Object.entries(value));
  return Object.entries(form).flatMap(([field, inner]) =>
    fields.has(field)
      ? misfits(fields.get(field), inner, `${place}.${field}`)
      : [`${place} has no ${field}: ${Object.keys(value).join(' ')}`],
  );
}

function isListForm(form: readonly [Form] | {readonly [field: string]: Form}): form is readonly [Form] {
  return Array.isArray(form);
}
