// What a forecast's figures come from: the profiles of a lot's candidates and their sources.
import {heaviestFirst} from '../records/candidates.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Desk} from './desk.ts';
import type {Outlook} from './outlook.ts';
import {fromMemory, profilesOf} from './profiles.ts';

export interface FigureSource {
  readonly profile: string;
  readonly name: string;
  readonly weight: number;
  /** Each source once: citation, where in it, and how surely it was seen. */
  readonly sources: readonly string[];
  /** Some figure of the profile is from memory. */
  readonly fromMemory: boolean;
}

/** The profiles behind an outlook, the heaviest first. */
export async function figuresBehind({forecast}: Outlook, {state}: Desk): Promise<FigureSource[]> {
  const profiles = await profilesOf(
    forecast.candidates.map(({profile}) => profile),
    state,
  );
  return heaviestFirst(forecast.candidates).flatMap(({profile: code, weight}) => {
    const profile = profiles.get(code);
    return profile === undefined ? [] : [sourced(profile, weight)];
  });
}

function sourced(profile: Profile, weight: number): FigureSource {
  return {
    profile: profile.profile,
    name: profile.name,
    weight,
    sources: profile.sources.map(sourceWords),
    fromMemory: fromMemory(profile),
  };
}

/** A source as people cite it, with its provenance. */
export function sourceWords({citation, locator, provenance}: Profile['sources'][number]): string {
  const where = locator === undefined ? '' : `, ${locator}`;
  const how = {
    seen: '',
    computed: ' (computed)',
    'from-memory': ' (from memory)',
    'common-practice': ' (common practice)',
  }[provenance];
  return `${citation}${where}${how}`;
}
