// The animals of a lot as what was seen tells them apart, at one pace; and how a look parts them anew.
import type {Stage} from '../records/stage.ts';
import {allot} from './allotment.ts';
import type {FounderClass} from './founders.ts';
import {lnChoose} from './gamma-function.ts';
import {isRead, readAs} from './misjudging.ts';
import type {ReadLook} from './reading.ts';
import {blended, given, later, moved, type Standing, shareOut, sharesIn, standingOf} from './standing.ts';
import type {Tempo, Tempos} from './tempo.ts';

/** Animals judged alike at every look that matters to their future. */
export interface Party {
  /** The lot they are in; empty where there is but one. */
  readonly lot: string;
  /** The stage they were last judged to be in. */
  readonly label: Stage;
  /** The look at which they were first judged so. */
  readonly sinceDays: number;
  /** So many are expected; need not be whole. */
  readonly count: number;
  readonly standing: Standing;
}

/** Parties after something was seen, and ln of the chance that it was. */
export interface Parted {
  readonly lnChance: number;
  readonly parties: readonly Party[];
}

/** Founders as they were found. */
export function joined(tempos: Tempos, founders: FounderClass, brood: number | undefined): Party {
  const {stage, atDays, count, lot} = founders;
  const tempo = tempos(lot);
  return {
    lot,
    label: readAs(stage, tempo.chain),
    sinceDays: atDays,
    count,
    standing: standingOf(tempo, founders, brood),
  };
}

/** Fewer animals than this are none. */
const NONE = 1e-9;

export function animalsIn(parties: readonly Party[]): number {
  return parties.reduce((sum, {count}) => sum + count, 0);
}

export function atInstant(tempos: Tempos, parties: readonly Party[], atDays: number): readonly Party[] {
  return parties.map(party => ({...party, standing: later(tempos(party.lot), party.standing, atDays)}));
}

/** The same animals from when they go on in a lot. */
export function goneInto(tempos: Tempos, party: Party, lot: string): Party {
  return {...party, lot, standing: moved(tempos(party.lot), tempos(lot), party.standing)};
}

/** Some were found out, each since an instant, and the others were not. */
export function afterEmergence(
  tempo: Tempo,
  parties: readonly Party[],
  emerged: ReadLook['emerged'],
): Parted {
  const whole = animalsIn(parties);
  const out = emerged.reduce((sum, {count}) => sum + count, 0);
  const scale = Math.min(1, whole / out);
  const inside = whole - Math.min(whole, out);
  const outcomes = emerged.map(({count}) => count * scale);
  const shares = parties.map(({standing}) => sharesIn(tempo, standing));
  if (inside > NONE) outcomes.push(inside);
  const chances = parties.flatMap(({standing}, i) => {
    const outSince = emerged.map(({sinceDays}) => shareOut(tempo, standing, sinceDays));
    return inside > NONE ? [...outSince, sum(shares[i]!)] : outSince;
  });
  const {lnChance, flows} = allot(
    parties.map(({count}) => count),
    outcomes,
    chances,
  );
  if (lnChance === Number.NEGATIVE_INFINITY) return {lnChance, parties: []};
  const stayed = parties.flatMap((party, i) => {
    const count = inside > NONE ? flows[(i + 1) * outcomes.length - 1]! : 0;
    return count > NONE ? [{...party, count, standing: notOut(party.standing, shares[i]!)}] : [];
  });
  return {lnChance, parties: stayed};
}

/** Those of a standing that are not out. */
export function notOut(standing: Standing, shares: readonly number[]): Standing {
  return given(
    standing,
    shares,
    shares.map(() => 1),
  );
}

/** Parties of less than this many animals join the largest that was judged as they were. */
const SMALL = 0.01;

/**
 * The animals were judged to be in stages. Where fewer were judged than there are, the others may be any; where more
 * were (an estimate), the numbers are scaled down.
 */
export function afterCount(
  tempo: Tempo,
  parties: readonly Party[],
  {judged, atDays}: Pick<ReadLook, 'judged' | 'atDays'>,
): Parted {
  const whole = animalsIn(parties);
  const all = judged.reduce((total, {count}) => total + count, 0);
  const seen = Math.min(whole, all);
  const unseen = whole - seen > NONE ? whole - seen : 0;
  const outcomes = judged.map(({count}) => (count * seen) / all);
  const shares = parties.map(({standing}) => sharesIn(tempo, standing));
  if (unseen > 0) outcomes.push(unseen);
  const chances = parties.flatMap((_, i) => {
    const judgedSo = judged.map(known => chanceOf(known.chances, shares[i]!));
    return unseen > 0 ? [...judgedSo, 1] : judgedSo;
  });
  const {lnChance, flows} = allot(
    parties.map(({count}) => count),
    outcomes,
    chances,
  );
  if (lnChance === Number.NEGATIVE_INFINITY) return {lnChance, parties: []};

  const width = outcomes.length;
  const after = judged.flatMap(({label, chances}, b) => {
    const flowOf = (i: number) => flows[i * width + b]!;
    const large = largeOnes(parties.map((_, i) => flowOf(i)));
    const parts = large.map(({place, count}) => {
      const party = parties[place]!;
      const sinceDays = party.label === label ? party.sinceDays : atDays;
      const standing = given(party.standing, shares[place]!, chances);
      return {lot: party.lot, label, sinceDays, count, standing};
    });
    return alikeTogether(parts);
  });
  if (unseen === 0) return {lnChance, parties: after};
  const others = largeOnes(parties.map((_, i) => flows[(i + 1) * width - 1]!));
  return {
    lnChance: lnChance - lnChoose(whole, seen),
    parties: [...after, ...others.map(({place, count}) => ({...parties[place]!, count}))],
  };
}

/**
 * Animals taken out of a stage: of those last judged to be in it by their numbers, then of the others. Those that go on
 * in another lot are parties of that one.
 */
export function afterRemoval(
  tempos: Tempos,
  parties: readonly Party[],
  {stage, count, into}: ReadLook['removed'][number],
): readonly Party[] {
  const isMeant = ({label}: Party) => stage === undefined || isRead(label, stage);
  const meant = animalsIn(parties.filter(isMeant));
  const others = animalsIn(parties) - meant;
  const left = Math.max(0, 1 - count / meant);
  const othersLeft = count > meant && others > 0 ? Math.max(0, 1 - (count - meant) / others) : 1;
  return parties
    .flatMap(party => {
      const stay = isMeant(party) ? left : othersLeft;
      const staying = {...party, count: party.count * stay};
      return into === undefined
        ? [staying]
        : [staying, goneInto(tempos, {...party, count: party.count * (1 - stay)}, into)];
    })
    .filter(party => party.count > NONE);
}

/** Flows worth following, largest first; what the others come to is added to the largest. */
function largeOnes(flows: readonly number[]): {readonly place: number; readonly count: number}[] {
  const all = sum(flows);
  const [largest, ...others] = [...flows.keys()].sort((a, b) => flows[b]! - flows[a]!);
  const large = others.filter(place => flows[place]! >= SMALL);
  const rest = all - sum(large.map(place => flows[place]!));
  return [{place: largest!, count: rest}, ...large.map(place => ({place, count: flows[place]!}))];
}

/** What came to be judged alike at the same look is one party: what lies further back matters to no adult. */
function alikeTogether(parties: readonly Party[]): readonly Party[] {
  const looks = [...new Set(parties.map(({sinceDays}) => sinceDays))];
  return looks.map(look => {
    const alike = parties.filter(({sinceDays}) => sinceDays === look);
    if (alike.length === 1) return alike[0]!;
    const count = animalsIn(alike);
    const standing = blended(
      alike.map(party => party.standing),
      alike.map(party => party.count / count),
    );
    return {...alike[0]!, count, standing};
  });
}

function chanceOf(chances: readonly number[], shares: readonly number[]): number {
  let sum = 0;
  for (let stage = 0; stage < shares.length; stage++) sum += shares[stage]! * chances[stage]!;
  return sum;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((a, b) => a + b, 0);
