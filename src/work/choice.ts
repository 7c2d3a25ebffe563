// What a lot may be: from what is recorded of it and what a person adds, suggestions with weights and reasons.
import {type Clues, type Suggestion, suggest} from '../development/choosing.ts';
import {Refusal} from '../records/refusal.ts';
import {monthOfSeason, seasonLagDays} from '../records/season.ts';
import {total} from '../records/stage.ts';
import {type Lot, type RoomState, valueAt} from '../records/state.ts';
import {SAT, type Sat, satIn} from '../records/where-it-sat.ts';
import type {Desk} from './desk.ts';
import {fromMemory, profileCodes, profilesOf} from './profiles.ts';

export interface Choice extends Suggestion {
  /** Some figure of the profile is from memory. */
  readonly fromMemory: boolean;
}

/** Suggestions among every profile at hand, the heaviest first. */
export async function choicesFor(clues: Clues, state?: RoomState): Promise<Choice[]> {
  const profiles = await profilesOf(await profileCodes(state), state);
  return suggest(clues, [...profiles.values()]).map(suggestion => ({
    ...suggestion,
    fromMemory: fromMemory(profiles.get(suggestion.profile)!),
  }));
}

/** What the daybook already says: name, host, where it sat, method, month, stages, the kind of unit. */
export function cluesOf(lot: Lot, {state, now}: Desk): Clues {
  const sample = state.samples.get(lot.sample);
  const unit = state.units.get(lot.stays.at(-1)?.unit ?? '');
  const noted = [lot.material?.what, sample?.substrate].map(satIn);
  const begun = lot.cohorts[0]?.stages ?? {};
  const stages = Object.keys(total(lot.alive) > 0 ? lot.alive : begun);
  return {
    taxon: lot.taxon,
    host: sample?.host,
    sat: noted.find(sat => sat !== undefined) ?? waterIn(sample?.habitat),
    method: sample?.method,
    month: monthOfSeason(lot.startedAt, seasonLagDays(state, lot.sample)),
    stages: stages.length === 0 ? undefined : stages,
    unitType: unit === undefined ? undefined : valueAt(unit, now).type,
  };
}

/** A habitat says in which water an animal was, but not in which part of a wood. */
function waterIn(habitat: string | undefined): Sat | undefined {
  const sat = satIn(habitat);
  return sat === 'still-water' || sat === 'running-water' ? sat : undefined;
}

/**
 * Clues as typed: "sat=leaf length=18 host=Salix caprea". What follows a name runs to the next name.
 * @throws Refusal for a name that is none, or a value it does not take
 */
export function readClues(text: string): Clues {
  const parts = [...text.matchAll(/([\p{L}-]+)\s*=\s*(.*?)(?=\s+[\p{L}-]+\s*=|$)/gu)];
  if (parts.length === 0) throw unreadable(`"${text}" is no clue`);
  return Object.assign({}, ...parts.map(([, name = '', value = '']) => clueOf(name, value.trim())));
}

/** One clue by its name, as commands and screens take it. @throws Refusal */
export function clueOf(name: string, value: string): Clues {
  switch (name) {
    case 'taxon':
    case 'host':
    case 'method':
      return {[name]: value};
    case 'unit-type':
      return {unitType: value};
    case 'stage':
      return {stages: value.split(/[\s,]+/)};
    case 'sat':
      return {sat: satNamed(value)};
    case 'length':
      return {lengthMm: numberIn(value, 'length', 0.1, 300)};
    case 'month':
      return {month: numberIn(value, 'month', 1, 12)};
    default:
      throw unreadable(`there is no clue "${name}"`);
  }
}

function satNamed(value: string): Sat {
  const sat = satIn(value);
  if (sat === undefined)
    throw new Refusal(`"${value}" is no place an animal sits in`, 'sat', `Known are ${SAT.join(', ')}.`);
  return sat;
}

function numberIn(value: string, name: string, least: number, most: number): number {
  const number = Number(value.replace(',', '.').replace(/\s*mm$/, ''));
  if (!Number.isFinite(number) || number < least || number > most)
    throw new Refusal(`"${value}" is no ${name}`, name, `Give a number from ${least} to ${most}.`);
  return number;
}

function unreadable(what: string): Refusal {
  return new Refusal(
    what,
    'clues',
    'Write name=value: taxon, host, sat, length (mm), stage, month, method, unit-type.',
  );
}

/** The clues as people read them, for the daybook: "host Brassica oleracea, leaf, 18 mm". */
export function clueWords({taxon, host, sat, lengthMm}: Clues): string {
  return [
    ...(taxon === undefined ? [] : [taxon]),
    ...(host === undefined ? [] : [`host ${host}`]),
    ...(sat === undefined ? [] : [sat.replaceAll('-', ' ')]),
    ...(lengthMm === undefined ? [] : [`${lengthMm} mm`]),
  ].join(', ');
}

/** The record that gives a lot these candidates. */
export function revisionOf(
  lot: string,
  choices: readonly {readonly profile: string; readonly weight: number}[],
  why: string,
): Readonly<Record<string, unknown>> {
  const candidates = choices.map(({profile, weight}) => ({profile, weight: Number(weight.toFixed(2))}));
  return {record: 'revision', lot, candidates, ...(why === '' ? {} : {why})};
}
