// What animals may be, from what a person knows of them: candidates with weights, and why.
//
// Every profile starts with the weight of its rank; each thing known multiplies it by how much likelier that is under
// the profile. The factors are common practice, no source: they order candidates, and what is seen later re-weighs them.
import type {Profile} from '../records/schema/index.ts';
import {compareStages, type Stage} from '../records/stage.ts';
import type {Sat} from '../records/where-it-sat.ts';
import {type Classes, classesOf, relation} from './taxon-relation.ts';

/** What is known; whatever is not is left out. */
export interface Clues {
  /** Order, family or name as far as known: "Lepidoptera", "Pieris sp.". */
  readonly taxon?: string | undefined;
  /** The plant, animal or material it lives on. */
  readonly host?: string | undefined;
  readonly sat?: Sat | undefined;
  /** Length of the body now. */
  readonly lengthMm?: number | undefined;
  readonly stages?: readonly Stage[] | undefined;
  /** 1 to 12 of the northern year, when it was found. */
  readonly month?: number | undefined;
  readonly method?: string | undefined;
  readonly unitType?: string | undefined;
}

export interface Suggestion {
  readonly profile: string;
  readonly name: string;
  readonly rank: string;
  /** All suggestions sum to one. */
  readonly weight: number;
  /** What speaks for it, and what to mind, in plain words. */
  readonly why: readonly string[];
  /** False where its moults are counted because no honest date exists. */
  readonly dated: boolean;
}

/** A single kind is unlikely before anything names it; the last resort waits until nothing else fits. */
const START: Readonly<Record<string, number>> = {
  species: 0.04,
  genus: 0.1,
  family: 0.6,
  guild: 0.6,
  order: 1,
};
const LAST_RESORT = 0.15;

/** More than this many help nobody; what weighs less than a fiftieth is left out. */
const MOST = 6;
const LEAST_WEIGHT = 0.02;
const GROUPS_SHARE = 0.25;

/** Methods that say where the animal was. */
const IS_FOUND_IN: Readonly<Record<string, Sat>> = {
  gall: 'gall',
  wood: 'wood',
  fruit: 'fruit',
  'leaf-mine': 'mine',
  litter: 'litter',
};

/** A range of lengths wider than this says nothing. */
const TELLING_RANGE = 4;

interface Verdict {
  readonly factor: number;
  readonly why?: string;
}

type Judge = (profile: Profile, clues: Clues, classes: Classes) => Verdict | undefined;

/** The likeliest candidates, the heaviest first; none where nothing is known or nothing fits. */
export function suggest(clues: Clues, profiles: readonly Profile[]): Suggestion[] {
  if (Object.values(clues).every(clue => clue === undefined)) return [];
  const classes = classesOf(profiles);
  const weighed = profiles.flatMap(profile => {
    const verdicts = judges.flatMap(judge => judge(profile, clues, classes) ?? []);
    const weight = verdicts.reduce((product, {factor}) => product * factor, startOf(profile));
    return weight === 0 ? [] : [{profile, weight, why: verdicts.flatMap(({why}) => why ?? [])}];
  });
  const heaviest = leavingRoom(withAGroup(weighed.sort((a, b) => b.weight - a.weight)));
  const sum = total(heaviest);
  const kept = heaviest.filter(({weight}) => weight >= LEAST_WEIGHT * sum);
  const whole = total(kept);
  return kept.map(({profile, weight, why}) => ({
    profile: profile.profile,
    name: profile.name,
    rank: profile.rank,
    weight: weight / whole,
    why: [...(why.length === 0 ? ['nothing against it'] : why), ...restsNow(profile, clues)],
    dated: !('undated' in profile),
  }));
}

interface Weighed {
  readonly profile: Profile;
  readonly weight: number;
  readonly why: readonly string[];
}

/** The heaviest, the heaviest group among them where there is one. */
function withAGroup(weighed: readonly Weighed[]): Weighed[] {
  const most = weighed.slice(0, MOST);
  const group = weighed.find(each => !isSingle(each));
  return group === undefined || most.includes(group) ? most : [...most.slice(0, MOST - 1), group];
}

/** Single kinds leave their groups a quarter: most kinds have no profile. */
function leavingRoom(weighed: readonly Weighed[]): Weighed[] {
  const single = total(weighed.filter(isSingle));
  const rest = total(weighed) - single;
  const least = (single * GROUPS_SHARE) / (1 - GROUPS_SHARE);
  if (rest === 0 || rest >= least) return [...weighed];
  return weighed
    .map(each => (isSingle(each) ? each : {...each, weight: (each.weight * least) / rest}))
    .sort((a, b) => b.weight - a.weight);
}

function isSingle({profile: {rank}}: Weighed): boolean {
  return rank === 'species' || rank === 'genus';
}

function total(weighed: readonly {readonly weight: number}[]): number {
  return weighed.reduce((sum, {weight}) => sum + weight, 0);
}

function startOf({rank, classification}: Profile): number {
  return Object.keys(classification).length === 0 ? LAST_RESORT : (START[rank] ?? 1);
}

const ofItsTaxon: Judge = (profile, {taxon}, classes) => {
  if (taxon === undefined) return undefined;
  switch (relation(taxon, profile, classes)) {
    case 'same':
      return {factor: profile.rank === 'species' ? 100 : 2.5, why: 'the name fits'};
    case 'genus':
      return {factor: 40, why: 'the genus fits'};
    case 'inside':
      return {factor: 0.5};
    case 'around':
      return {factor: 0.4, why: 'the name is within it'};
    case 'apart':
      return {factor: 0};
    case 'open':
      return {factor: 0.03};
  }
};

const onItsHost: Judge = ({met, rank}, {host}) => {
  if (host === undefined || met === undefined || met.hosts.length === 0) return undefined;
  const words = host.toLowerCase().split(/[^\p{L}]+/u);
  const known = met.hosts.find(each => words.includes(each.toLowerCase()));
  if (known !== undefined) return {factor: 25, why: `lives on ${known}`};
  return {factor: rank === 'species' ? 0.05 : 0.5};
};

const whereItSat: Judge = ({met}, {sat, method}) => {
  const place = sat ?? IS_FOUND_IN[method ?? ''];
  if (place === undefined || met === undefined || met.sat.length === 0) return undefined;
  // A kind met in few places is the likelier one where it is met.
  if (met.sat.includes(place))
    return {factor: 8 / met.sat.length ** 0.8, why: `met in or on ${place.replaceAll('-', ' ')}`};
  return {factor: 0.04};
};

const byItsMethod: Judge = ({met}, {method}) => {
  if (method === undefined || method === 'other' || method in IS_FOUND_IN || met === undefined)
    return undefined;
  return met.methods.some(each => each === method)
    ? {factor: 1.5, why: `taken by ${method.replaceAll('-', ' ')}`}
    : {factor: 0.5};
};

const asLongAs: Judge = ({met}, {lengthMm}) => {
  const full = met?.lengthMm;
  if (lengthMm === undefined || full === undefined) return undefined;
  if (lengthMm > 1.2 * full[1]) return {factor: 0.02};
  if (full[1] > TELLING_RANGE * full[0]) return undefined;
  if (lengthMm >= 0.8 * full[0]) return {factor: 1.5, why: `full-grown at ${full[0]} to ${full[1]} mm`};
  return {factor: 1, why: `grows to ${full[0]} to ${full[1]} mm`};
};

const withItsStages: Judge = (profile, {stages = []}) => {
  const worst = stages.map(stage => stageFactor(profile, stage));
  return worst.length === 0 ? undefined : {factor: Math.min(...worst)};
};

function stageFactor({stages}: Profile, stage: Stage): number {
  const [kind, instar] = stage.split('-');
  const alike = stages.filter(each => each.stage.split('-')[0] === kind);
  if (alike.length === 0) return kind === 'prepupa' || kind === 'egg' ? 0.5 : 0;
  if (instar === undefined) return 1;
  const most = alike.reduce((found, each) => Math.max(found, lastInstar(each)), 0);
  return most > 0 && Number(instar) > most ? 0.02 : 1;
}

function lastInstar(stage: Profile['stages'][number]): number {
  if ('instars' in stage && stage.instars !== undefined) return stage.instars[1];
  return Number(stage.stage.split('-')[1] ?? 0);
}

const inItsUnit: Judge = ({rearing}, {unitType}) => {
  if (unitType === undefined || rearing.length === 0) return undefined;
  return rearing.some(each => each === unitType) ? undefined : {factor: 0.2};
};

const judges: readonly Judge[] = [
  ofItsTaxon,
  onItsHost,
  whereItSat,
  asLongAs,
  byItsMethod,
  withItsStages,
  inItsUnit,
];

/** Whether animals found like this rest at this time of year: no weight, but to be minded. */
function restsNow({diapause}: Profile, {month, stages = []}: Clues): string[] {
  if (month === undefined) return [];
  const kinds = new Set(stages.map(stage => stage.split('-')[0]));
  const resting = diapause
    .filter(({stage, months}) => months.includes(month) && kinds.has(stage.split('-')[0]))
    .toSorted((a, b) => compareStages(a.stage, b.stage));
  const worst = Math.max(0, ...resting.map(({chance}) => chance));
  if (worst < 0.1) return [];
  const share = worst > 0.9 ? 'nearly all' : `${Math.round(worst * 10)} of 10`;
  return [`${share} found at this time rest till spring`];
}
