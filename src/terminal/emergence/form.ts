// The form for adults that came out: what it holds, and the records it becomes.
import {codeCount, type SpecimenRecord, specimenCodes} from '../../records/specimen-codes.ts';
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
    animal: undefined,
    taxon: undefined,
    code: undefined,
    at: undefined,
    parasitoids: undefined,
    scavengers: false,
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

export function countOf({adults}: Pick<EmergenceSheet, 'adults'>): number {
  return adults.reduce((sum, {count}) => sum + count, 0);
}

/** What was entered as adults came out of one host; what was kept with them are its remains. */
export function asParasitoids(form: EmergenceSheet, together = false): EmergenceSheet {
  return {
    ...form,
    adults: [],
    exuviae: undefined,
    taxon: undefined,
    doubted: false,
    parasitoids: {
      count: countOf(form),
      taxon: form.taxon,
      sex: sexOf(form),
      together: together ? true : undefined,
      remains: form.exuviae?.code,
    },
  };
}

/** That of all of them, where it was looked at. */
function sexOf({adults: [first, ...others]}: EmergenceSheet): Sex | undefined {
  const alike = first !== undefined && others.every(({sex}) => sex === first.sex);
  return alike && first.sex !== 'unknown' ? first.sex : undefined;
}

/** A part of the host kept with its parasitoids, under the code of the first of them and a letter; or no longer. */
export function partToggled(
  form: EmergenceSheet,
  part: 'remains' | 'cocoon',
  state: RoomState,
): EmergenceSheet {
  const {parasitoids} = form;
  if (parasitoids === undefined) return form;
  const {[part]: kept, ...without} = parasitoids;
  return {
    ...form,
    parasitoids: kept === undefined ? {...parasitoids, [part]: partCode(form, part, state)} : without,
  };
}

/** "A-p1a" for the remains of the host, "A-p1b" for the cocoon. */
export function partCode(form: EmergenceSheet, part: 'remains' | 'cocoon', state: RoomState): string {
  const wasps = recordsOf(form, state).find(({record}) => record === 'parasitoid');
  const [first = ''] = wasps === undefined ? [] : codesIn(wasps, state);
  return `${first}${part === 'remains' ? 'a' : 'b'}`;
}

/** What is written down of the animals; nothing where nothing was entered. */
export function recordsOf(form: EmergenceSheet, state: RoomState): SpecimenRecord[] {
  const out = form.scavengers ? scavengers(form, state) : form.adults.length === 0 ? [] : [ownAdults(form)];
  const [first, ...others] = [...out, ...parasitoidsOf(form)];
  if (first === undefined) return [];
  if (form.code === undefined) return [first, ...others];
  return [{...first, codes: codesFrom(form.code, codeCount(first))}, ...others];
}

function ownAdults(form: EmergenceSheet): SpecimenRecord {
  const {lot, at, animal, adults, fate, subimago, condition, exuviae} = form;
  const as = subimago ? 'subimago' : 'adult';
  return {record: 'emergence', lot, at, animal, adults: [...adults], fate, as, condition, exuviae};
}

/** Specimens of the field sample: they are no animals of the lot. */
function scavengers({lot, at, adults, taxon}: EmergenceSheet, {lots}: RoomState): SpecimenRecord[] {
  const sample = lots.get(lot)?.sample;
  return adults.map(({sex, count}) => ({
    ...{record: 'voucher', sample, scavengerIn: lot, at, stage: 'adult', taxon, count},
    sex: sex === 'unknown' ? undefined : sex,
  }));
}

function parasitoidsOf({lot, at, animal, parasitoids}: EmergenceSheet): SpecimenRecord[] {
  if (parasitoids === undefined) return [];
  const {remains, cocoon, ...out} = parasitoids;
  return [
    {
      ...{record: 'parasitoid', lot, at, animal, hosts: 1, ...out},
      remains: remains === undefined ? undefined : {code: remains, what: 'host-remains'},
      cocoon: cocoon === undefined ? undefined : {code: cocoon, what: 'cocoon'},
    },
  ];
}

/** The name of each, written down with them. */
export function namesOf({taxon, at}: EmergenceSheet, codes: readonly string[]): object[] {
  return taxon === undefined ? [] : codes.map(specimen => ({record: 'identification', specimen, taxon, at}));
}

/** "A31-0311" and those that follow: "A31-0312" … */
function codesFrom(first: string, count: number): string[] {
  const [, stem = first, digits = ''] = /^(.*?)(\d*)$/.exec(first) ?? [];
  return Array.from({length: count}, (_, i) =>
    i === 0 ? first : `${stem}${String(Number(digits) + i).padStart(digits.length, '0')}`,
  );
}

/** The codes that saving gives, in the order of the lines. */
export function codesOf(form: EmergenceSheet, state: RoomState): string[] {
  return recordsOf(form, state).flatMap(record => codesIn(record, state));
}

export function codesIn(record: SpecimenRecord, {specimens}: RoomState): string[] {
  return specimenCodes(record, code => specimens.has(code));
}

/** "A-7", "A-7 to A-9" */
export function rangeOf(codes: readonly string[]): string {
  return codes.length < 2 ? codes.join('') : `${codes[0]} to ${codes.at(-1)}`;
}
