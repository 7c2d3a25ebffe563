// The form for adults that came out: what it holds, and the records it becomes.
import {type SpecimenRecord, specimenCodes} from '../../records/specimen-codes.ts';
import type {RoomState} from '../../records/state.ts';
import type {EmergenceSheet} from '../sheet.ts';

export type Sex = EmergenceSheet['adults'][number]['sex'];

export const FATES = ['kept', 'killed', 'released', 'dead'] as const;

export function emergenceSheet(lot: string): EmergenceSheet {
  return {
    kind: 'emergence',
    lot,
    number: '',
    adults: [],
    fate: 'kept',
    subimago: false,
    condition: undefined,
    exuviae: undefined,
    parasitoids: undefined,
    doubted: false,
    saved: undefined,
  };
}

/** A typed number before the key counts; else it is one more of that sex. */
export function withAdults(form: EmergenceSheet, sex: Sex): EmergenceSheet {
  const count = form.number === '' ? 1 : Number(form.number);
  if (count === 0) return {...form, number: ''};
  return {...form, number: '', adults: [...form.adults, {sex, count}]};
}

/** The number being typed loses a digit; else the last line goes. */
export function takenBack(form: EmergenceSheet): EmergenceSheet {
  if (form.number !== '') return {...form, number: form.number.slice(0, -1)};
  return {...form, adults: form.adults.slice(0, -1)};
}

export function nextFate(form: EmergenceSheet): EmergenceSheet {
  return {...form, fate: FATES[(FATES.indexOf(form.fate) + 1) % FATES.length]!};
}

/** How adults come out badly: one key goes through them for the last line, then back to nothing. */
const CONDITIONS: readonly string[] = ['deformed', 'battered', 'drowned', 'half out'];

export function nextConditionOfLast(form: EmergenceSheet): EmergenceSheet {
  return lastChanged(form, ({condition, ...line}) => {
    const next = CONDITIONS[condition === undefined ? 0 : CONDITIONS.indexOf(condition) + 1];
    return next === undefined ? line : {...line, condition: next};
  });
}

/** The fate of the last line alone, then back to that of all. */
export function nextFateOfLast(form: EmergenceSheet): EmergenceSheet {
  return lastChanged(form, ({fate, ...line}) => {
    const next = FATES[fate === undefined ? 0 : FATES.indexOf(fate) + 1];
    return next === undefined ? line : {...line, fate: next};
  });
}

function lastChanged(
  form: EmergenceSheet,
  change: (line: EmergenceSheet['adults'][number]) => EmergenceSheet['adults'][number],
): EmergenceSheet {
  const last = form.adults.at(-1);
  return last === undefined ? form : {...form, adults: [...form.adults.slice(0, -1), change(last)]};
}

const KEPT = ['exuviae', 'puparium', 'cocoon', 'gall', 'mine', 'host-remains', 'other'] as const;

/** "A-7a", "A-7a 1" with how surely it belongs (1 same animal to 4 assumed), "puparium A-7a 2". */
export function exuviaeIn(text: string): EmergenceSheet['exuviae'] {
  const words = text.trim().split(/\s+/u);
  const what = words.length > 1 ? KEPT.find(kind => kind === words[0]) : undefined;
  const [code = '', association] = what === undefined ? words : words.slice(1);
  return {
    code,
    ...(what === undefined ? {} : {what}),
    ...(association === undefined ? {} : {association: Number(association)}),
  };
}

/** "3 Braconidae": a number, then perhaps a name; undefined where there is no number. */
export function parasitoidsIn(text: string): EmergenceSheet['parasitoids'] {
  const [, count, taxon = ''] = /^(\d+)\s*(.*)$/.exec(text.trim()) ?? [];
  if (count === undefined || Number(count) === 0) return undefined;
  return {count: Number(count), taxon: taxon === '' ? undefined : taxon};
}

export function countOf({adults}: EmergenceSheet): number {
  return adults.reduce((sum, {count}) => sum + count, 0);
}

/** What is written down; a look that found none where nothing was entered. */
export function recordsOf(form: EmergenceSheet): SpecimenRecord[] {
  const {lot, adults, fate, subimago, condition, exuviae, parasitoids} = form;
  const emergence: SpecimenRecord[] =
    adults.length === 0
      ? []
      : [
          {
            record: 'emergence',
            lot,
            adults: [...adults],
            fate,
            as: subimago ? 'subimago' : 'adult',
            ...(condition === undefined ? {} : {condition}),
            ...(exuviae === undefined ? {} : {exuviae}),
          },
        ];
  const wasps: SpecimenRecord[] =
    parasitoids === undefined
      ? []
      : [
          {
            record: 'parasitoid',
            lot,
            count: parasitoids.count,
            hosts: 1,
            ...(parasitoids.taxon === undefined ? {} : {taxon: parasitoids.taxon}),
          },
        ];
  return [...emergence, ...wasps];
}

/** The codes that saving gives, in the order of the lines. */
export function codesOf(form: EmergenceSheet, {specimens}: RoomState): string[] {
  return recordsOf(form).flatMap(record => specimenCodes(record, code => specimens.has(code)));
}

/** "A-7", "A-7 to A-9" */
export function rangeOf(codes: readonly string[]): string {
  return codes.length < 2 ? codes.join('') : `${codes[0]} to ${codes.at(-1)}`;
}
