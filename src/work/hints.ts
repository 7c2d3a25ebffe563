// What a person should know right after something was written down: cautions, what is offered, what follows.
import {tenantsOf} from '../care/lodging.ts';
import {unitOf} from '../care/occupancy.ts';
import {restOf} from '../care/rest.ts';
import {feeders} from '../care/stages.ts';
import {clockOf} from '../care/window.ts';
import {instantWords} from '../exchange/time-words.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {type Entry, MS_PER_DAY} from '../records/entry.ts';
import {unitTypeFor} from '../records/housing.ts';
import {cautionsOf, methods} from '../records/methods.ts';
import type {RecordOf} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {waitedHours, waitedWords} from '../records/standing.ts';
import {type Lot, valueAt} from '../records/state.ts';
import {choicesFor, cluesOf} from './choice.ts';
import type {Desk} from './desk.ts';
import {saidOfExtremes} from './extremes.ts';
import {type Grounds, groundsOf, lodgingFaults} from './lodging.ts';
import {leftOpen, WHEREABOUTS} from './not-accounted.ts';
import {profileOf} from './profiles.ts';
import type {Applied, Recorded} from './record.ts';
import type {Session} from './session.ts';

/** Sentences without their stop, each once, in the order of what was written. */
export async function hintsAfter(written: readonly Entry[], desk: Desk): Promise<string[]> {
  const hints = await Promise.all(written.map(entry => hintsOf(entry, desk, written)));
  return [...new Set(hints.flat())];
}

async function hintsOf(
  {id, record}: Entry,
  desk: Desk,
  written: readonly Entry[],
): Promise<readonly string[]> {
  switch (record.record) {
    case 'sample':
      return aboutSample(record.code, desk);
    case 'lot': {
      const lot = desk.state.lots.get(record.code);
      return [
        ...aboutHousing(lot, record.unit, desk),
        ...(await aboutRoom(lot, record.unit, desk)),
        ...(await aboutWhatItMayBe(lot, desk)),
      ];
    }
    case 'move':
      return aboutRoom(desk.state.lots.get(record.lot), record.unit, desk);
    case 'revision': {
      const lot = desk.state.lots.get(record.lot);
      return record.needs === undefined ? [] : aboutRoom(lot, lot?.stays.at(-1)?.unit ?? '', desk, true);
    }
    case 'split':
      return record.unit === undefined ? [] : aboutRoom(desk.state.lots.get(record.into), record.unit, desk);
    case 'count':
      return [
        ...aboutThoseNotSeen(record, desk),
        ...(await aboutEaters(desk.state.lots.get(record.lot), desk)),
      ];
    case 'emergence':
      return record.as === 'subimago'
        ? aboutSubimago(id, desk)
        : aboutHardening(desk.state.lots.get(record.lot));
    case 'parasitoid':
      return aboutParts(id, desk);
    case 'voucher':
      // It was entered as an adult first, and that no longer counts.
      return total(desk.state.lots.get(record.scavengerIn ?? '')?.alive ?? {}) === 0 ||
        !written.some(({record: other}) => other.record === 'void')
        ? []
        : [
            `one more of ${record.scavengerIn} counts as alive again; if it is dead: teneral loss ${record.scavengerIn} 1 --cause dead`,
          ];
    case 'imago':
      return record.exuviae === undefined
        ? [
            `its skin as a subimago belongs to it: teneral imago ${record.specimen} takes it as --skin ${record.specimen}b`,
          ]
        : [];
    case 'identification':
      return aboutTheLotsName(record.specimen, record.taxon, desk);
    case 'extremes':
      return saidOfExtremes(id, desk);
    case 'bycatch':
      return record.kind === 'arthropod' || record.alive === false
        ? []
        : ['vertebrates are often protected: free them at once where they were caught, follow local rules'];
    default:
      return [];
  }

  async function aboutHardening(lot: Lot | undefined): Promise<readonly string[]> {
    const hours = lot && (await hardenHoursOf(lot, desk));
    return hours === undefined ? [] : [`let them harden ${hours} h before they are collected`];
  }
}

/** How much food is still wanted where some have stopped eating; where all have, until when they are left alone. */
async function aboutEaters(lot: Lot | undefined, desk: Desk): Promise<readonly string[]> {
  const prepupae = lot?.alive.prepupa ?? 0;
  if (lot === undefined || lot.closed !== undefined || prepupae === 0) return [];
  const {state, civil, now} = desk;
  const [eating, all] = [feeders(lot), total(lot.alive)];
  if (eating > 0)
    return [`${eating} of ${all} still eat: feed ${Math.round((100 * eating) / all)} % of the ration`];
  const unit = unitOf(lot, state);
  if (unit === undefined) return [];
  const clock = clockOf(civil, () => null);
  const until = restOf(unit, tenantsOf(unit.code, state), clock);
  if (until === undefined || until <= now) return [];
  const {allTasks} = await import('./today.ts');
  const move = (await allTasks(desk)).find(({task, lot: of}) => task === 'move-pupae' && of === lot.code);
  const then =
    move === undefined ? '' : `; ${move.title} ${instantWords(move.planned ?? move.target, civil, now)}`;
  return [
    `nobody in ${unit.code} eats: no food, and leave it alone until ${instantWords(until, civil, now)}${then}`,
  ];
}

/** What a subimago needs, until when somebody looks again, and how both skins stay with it. */
function aboutSubimago(entry: string, {state, civil, now}: Desk): readonly string[] {
  return [...state.specimens.values()]
    .filter(specimen => specimen.entry === entry && specimen.fate === 'kept')
    .flatMap(({code, at, exuviae}) => [
      `move ${code} dry, airy and upright; look for the imago within 24 h, by ${instantWords(at + MS_PER_DAY, civil, now)}`,
      ...(exuviae === undefined
        ? [`keep its larval skin with it as ${code}a: teneral correct ${entry} exuviae.code=${code}a`]
        : []),
      `keep the skin it casts next as ${code}b: teneral imago ${code} --skin ${code}b`,
    ]);
}

/** The remains of the host and the cocoon belong to what came out, under its number. */
function aboutParts(entry: string, {state}: Desk): readonly string[] {
  const first = [...state.specimens.values()].find(specimen => specimen.entry === entry);
  if (first === undefined) return [];
  const {code, remains, cocoon} = first;
  return [
    ...(remains === undefined
      ? [`keep the remains of the host as ${code}a: teneral correct ${entry} remains.code=${code}a`]
      : []),
    ...(cocoon === undefined && remains?.what !== 'cocoon'
      ? [`keep a cocoon as ${code}b: teneral correct ${entry} cocoon.code=${code}b`]
      : []),
  ];
}

/** Fewer than are alive, and nobody said whether all were looked at. */
function aboutThoseNotSeen({lot, stages, complete}: RecordOf<'count'>, {state}: Desk): readonly string[] {
  const open = leftOpen(state.lots.get(lot), stages);
  if (open === 0 || complete !== undefined) return [];
  return [
    `taken as a count of a part; if all were looked at, ${open} are not accounted for: count again with --others ${listed(WHEREABOUTS)}`,
  ];
}

const listed = (words: readonly string[]): string => `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;

async function aboutSample(code: string, {state, civil}: Desk): Promise<readonly string[]> {
  const sample = state.samples.get(code);
  if (sample === undefined) return [];
  const waited = waitedHours(sample, civil);
  const offered = unitTypeFor(sample, undefined).replace('-', ' ');
  return [
    ...(waited === undefined ? [] : [waitedWords(waited)]),
    ...(sample.medium === 'none' ? [`for what lives in it: ${article(offered)}`] : []),
    ...cautionsOf(sample),
  ];
}

/** A lot begun without candidates gets no dates: what it may be by what was written of it, and where to say so. */
async function aboutWhatItMayBe(lot: Lot | undefined, desk: Desk): Promise<readonly string[]> {
  if (lot === undefined || lot.candidates.length > 0) return [];
  const likely = (await choicesFor(cluesOf(lot, desk), desk.state)).slice(0, 3).map(({profile}) => profile);
  const may = likely.length === 0 ? 'what it may be is not said' : `it may be ${likely.join(', ')}`;
  return [`${may}: m on its sheet, or teneral candidates ${lot.code}, says why and takes them, for dates`];
}

/** Of animals of which no profile says it. */
function aboutHousing(lot: Lot | undefined, unit: string, {state}: Desk): readonly string[] {
  const history = state.units.get(unit);
  if (lot === undefined || lot.candidates.length > 0 || history === undefined) return [];
  const {type} = valueAt(history, lot.startedAt);
  const offered = unitTypeFor(state.samples.get(lot.sample), lot);
  if (offered === type) return [];
  const [usual, own] = [offered, type].map(one => article(one.replace('-', ' ')));
  return [`such animals are usually kept in ${usual}; ${unit} is ${own}`];
}

/** Of more lots than these their warmth is left to the alerts: to reckon it would take longer than to write them. */
const FEW_LOTS = 20;

/** Warns whoever wrote many records at once of lots in units that do not suit them. */
export async function warnOfPlaces(session: Session, {applied, written, desk}: Recorded): Promise<Applied> {
  const units = new Map<string, string>();
  for (const {record} of written) {
    if (record.record === 'lot') units.set(record.code, record.unit);
    if (record.record === 'move') units.set(record.lot, record.unit);
    if (record.record === 'split' && record.unit !== undefined) units.set(record.into, record.unit);
  }
  if (units.size === 0) return applied;
  const grounds = await groundsOf(desk, {warmth: units.size <= FEW_LOTS});
  for (const [lot, unit] of units)
    for (const hint of await aboutRoom(desk.state.lots.get(lot), unit, desk, false, grounds))
      session.warn(hint);
  return applied;
}

/** What speaks against the unit that a lot was just put into: who lives there, its room, its air. */
async function aboutRoom(
  lot: Lot | undefined,
  unit: string,
  desk: Desk,
  isHome = false,
  grounds?: Grounds,
): Promise<readonly string[]> {
  const history = desk.state.units.get(unit);
  if (lot === undefined || history === undefined) return [];
  if (lot.closed !== undefined || lot.stays.at(-1)?.unit !== unit) return [];
  const subject = {...lot, animals: total(lot.alive), joins: isHome};
  const faults = await lodgingFaults(desk, subject, valueAt(history, desk.now), grounds);
  return faults.length === 0
    ? []
    : [
        `look at this place again: ${unit}: ${faults.map(({what}) => what).join('; ')}; teneral plan ${lot.code} shows the others`,
      ];
}

/** How long adults of a lot need until they are hard, as the likeliest candidate's profile has it. */
export async function hardenHoursOf(
  {candidates}: Lot,
  {state}: Pick<Desk, 'state'>,
): Promise<number | undefined> {
  const [likeliest] = heaviestFirst(candidates);
  return (await profileOf(likeliest?.profile ?? '', state))?.adult?.hardenHours;
}

async function aboutTheLotsName(code: string, taxon: string, {state}: Desk): Promise<readonly string[]> {
  const specimen = state.specimens.get(code);
  const lot = state.lots.get(specimen?.lot ?? '');
  if (lot === undefined || specimen?.kind === 'parasitoid' || lot.taxon === taxon) return [];
  const now = lot.taxon === undefined ? 'has no name yet' : `is still ${lot.taxon}`;
  return [
    `lot ${lot.code} ${now}; teneral revise ${lot.code} --after ${code} names it so too, if all of it is`,
  ];
}

function article(noun: string): string {
  return /^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`;
}

/** What is usual for a method, in words, with where that comes from. */
export function usualOf(method: keyof typeof methods): string {
  const {usually} = methods[method];
  return usually === '' ? '' : `${usually} (common practice, no source)`;
}
