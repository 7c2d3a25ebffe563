// What zod found wrong, in words for people.
import type * as z from 'zod';
import {Refusal} from '../refusal.ts';

type Issue = z.core.$ZodIssue;

/** The first complaint about a value that came from outside: the field, what stands there, what is expected. */
export function refusalFor(error: z.ZodError, value: unknown, where: string): Refusal {
  const issue = error.issues[0]!;
  const field = issue.path.map(String).join('.');
  const place = field === '' ? where : `${where}, field ${field}`;
  if (issue.code === 'unrecognized_keys')
    return new Refusal(
      `unknown field ${issue.keys.map(quoted).join(', ')}`,
      place,
      'Remove it or correct its spelling.',
    );
  if (issue.code === 'invalid_key')
    return new Refusal(
      `${quoted(String(issue.path.at(-1)))} is not accepted`,
      place,
      `${sentence(expectation(issue.issues[0]!))}.`,
    );
  const stands = standing(value, issue.path);
  const what = stands === undefined ? 'it is missing' : `${shown(stands)} is not accepted`;
  return new Refusal(what, place, `${sentence(expectation(issue))}.`);
}

function expectation(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.message.startsWith('Invalid input')
        ? `${article(issue.expected)} is expected`
        : issue.message;
    case 'invalid_value':
      return `it is one of ${issue.values.map(String).join(', ')}`;
    case 'too_small':
      return issue.message.startsWith('Too small')
        ? `it is ${issue.inclusive ? 'at least' : 'more than'} ${issue.minimum}`
        : issue.message;
    case 'too_big':
      return issue.message.startsWith('Too big')
        ? `it is ${issue.inclusive ? 'at most' : 'less than'} ${issue.maximum}`
        : issue.message;
    case 'invalid_union':
      return issue.errors[0]?.[0] === undefined || !issue.message.startsWith('Invalid input')
        ? issue.message
        : expectation(issue.errors[0][0]);
    default:
      return issue.message;
  }
}

function article(type: string): string {
  const names: Readonly<Record<string, string>> = {
    int: 'a whole number',
    number: 'a number',
    string: 'text',
    boolean: 'true or false',
    array: 'a list',
    object: 'an object in braces',
    record: 'an object in braces',
    tuple: 'a list',
  };
  return names[type] ?? type;
}

function standing(value: unknown, path: readonly PropertyKey[]): unknown {
  let inner: unknown = value;
  for (const step of path) inner = (inner as Record<PropertyKey, unknown> | undefined)?.[step];
  return inner;
}

function shown(value: unknown): string {
  const text = JSON.stringify(value) ?? String(value);
  return text.length > 80 ? `${text.slice(0, 77)}…` : text;
}

const quoted = (text: string): string => `"${text}"`;

function sentence(message: string): string {
  const text = message.replace(/\.$/, '');
  return text.charAt(0).toUpperCase() + text.slice(1);
}
