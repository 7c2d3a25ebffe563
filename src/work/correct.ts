// A wrong entry put right: it is void from now on, with its reason, and the same record with other values stands in its place.
import {codesGiven} from '../records/codes.ts';
import type {Entry} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {parseRecord} from '../records/schema/index.ts';
import {specimenCodes} from '../records/specimen-codes.ts';
import type {RoomState} from '../records/state.ts';
import {openDesk} from './desk.ts';
import {type Recorded, record} from './record.ts';
import type {Session} from './session.ts';

export interface Correction {
  readonly entry: string;
  /** "count=3", "stages.pupa=4", "condition=" for nothing: the path of a field, and its value as JSON or as words. */
  readonly changes: readonly string[];
  readonly reason?: string | undefined;
  readonly sure?: boolean | undefined;
}

/** @throws Refusal where there is no such entry, a change is none, or what would stand then cannot be */
export async function correct(
  session: Session,
  {entry: id, changes, reason, sure}: Correction,
): Promise<Recorded> {
  const {state} = await openDesk(session, 'all');
  const wrong = state.history.find(entry => entry.id === id);
  if (wrong === undefined)
    throw new Refusal(`there is no entry ${id}`, 'correct', 'teneral daybook shows their ids.');
  if (state.voided.has(id))
    throw new Refusal(
      `entry ${id} is void already`,
      'correct',
      `teneral daybook ${id} shows what stands in its place.`,
    );
  if (wrong.record.record === 'void')
    throw new Refusal(`entry ${id} only voids another`, 'correct', 'Void it, and correct that one.');
  const right = {...changed(wrong, changes), replaces: id, ...(sure === true ? {sure} : {})};
  const codes = codesAnew(wrong, right, state);
  const taken = {record: 'void', entry: id, ...(reason === undefined ? {} : {reason})};
  return record(session, [taken, {...right, ...codes}], index => (index === 0 ? id : `in place of ${id}`));
}

/** Specimens keep their codes; where there are more of them now, the others get the next ones. */
function codesAnew(
  {record: wrong}: Entry,
  right: object,
  state: RoomState,
): {readonly codes?: readonly string[]} {
  if (!('codes' in wrong) || wrong.codes === undefined) return {};
  if (!('codes' in right) || JSON.stringify(right.codes) !== JSON.stringify(wrong.codes)) return {};
  const record = parseRecord({...right, codes: undefined}, '');
  if (record.record !== wrong.record) return {};
  const used = new Set([
    ...state.samples.keys(),
    ...state.lots.keys(),
    ...state.specimens.keys(),
    ...state.history.flatMap(entry => codesGiven(entry.record)),
  ]);
  return {codes: specimenCodes({...record, codes: wrong.codes}, code => used.has(code))};
}

/** The record with its changes, as a person would write it today. */
function changed({id, record: wrong}: Entry, changes: readonly string[]): Record<string, unknown> {
  const {key, recordedAt, ...kept} = structuredClone(wrong);
  const right: Record<string, unknown> = {...kept};
  if (changes.length === 0)
    throw new Refusal('nothing is to be changed', `entry ${id}`, 'Write field=value, such as count=3.');
  for (const change of changes) set(right, change, id);
  return right;
}

function set(record: Record<string, unknown>, change: string, id: string): void {
  const [, path, value] = /^([\w.-]+)=(.*)$/su.exec(change) ?? [];
  if (path === undefined || value === undefined)
    throw new Refusal(`"${change}" is no change`, `entry ${id}`, 'Write field=value, such as count=3.');
  const steps = path.split('.');
  const last = steps.pop()!;
  let inner: unknown = record;
  for (const step of steps) {
    const there: unknown = isOpen(inner) ? inner[step] : undefined;
    if (isOpen(inner) && there === undefined) inner[step] = {};
    inner = isOpen(inner) ? inner[step] : undefined;
  }
  if (!isOpen(inner))
    throw new Refusal(
      `the record has no field ${path}`,
      `entry ${id}`,
      'teneral daybook --json shows its fields.',
    );
  if (value === '') delete inner[last];
  else inner[last] = readValue(value);
}

function isOpen(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

/** A number, true, false, a list or an object as JSON has them; anything else is text. */
function readValue(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return text;
  }
}
