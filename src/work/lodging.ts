// In which units animals could live, now or soon, and how a lot is parted where none holds it whole.
import {
  housingCodes,
  type Needs,
  needsOf,
  type Room,
  roomIn,
  unitsNow,
  type Verdict,
} from '../care/lodging.ts';
import {sharedOut} from '../care/shared-out.ts';
import {temperatureItself} from '../climate/mean-day.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {type Lot, openLots, type Unit} from '../records/state.ts';
import {doseBetween} from '../thermal/dose.ts';
import {type Limits, limitsOf} from './bearable.ts';
import {coursesOf} from './courses.ts';
import type {Desk} from './desk.ts';
import {profilesOf} from './profiles.ts';

export interface LodgingQuestion {
  /** A lot of the room, or the code that one to be opened will have. */
  readonly lot: string;
  /** Of a lot to be opened: what it is, and how many animals. */
  readonly profile?: string | undefined;
  readonly animals?: number | undefined;
  /** No warmer than this, °C, in place of what the profile bears. */
  readonly warmestC?: number | undefined;
  /** So much room for one of them, litres, in place of what the profile says. */
  readonly litresEach?: number | undefined;
}

export interface Lodging extends Room {
  readonly unit: string;
  readonly place: string;
  /** The mean of the week to come. */
  readonly expectedC: number;
}

export interface LodgingAnswer {
  readonly lot: string;
  readonly animals: number;
  readonly needs: Needs;
  readonly limits: Limits;
  /** Holds all of them, the soonest first; of those free at once the one where they live, then the emptiest. */
  readonly whole: readonly Lodging[];
  /** Holds some of them. */
  readonly some: readonly Lodging[];
  readonly unfit: readonly {readonly unit: string; readonly why: string}[];
  /** How to part them today where no unit holds all of them today; empty where one does, or all together do not. */
  readonly parts: readonly {readonly lot: string; readonly unit: string; readonly animals: number}[];
}

const WEEK_DAYS = 7;

/** @throws Refusal where there is no such lot and it is not said what it is to be */
export async function lodgings(desk: Desk, question: LodgingQuestion): Promise<LodgingAnswer> {
  const {state} = desk;
  const subject = subjectOf(desk, question);
  const judged = await judge(desk, subject, question.litresEach);
  const own = await profilesOf(
    subject.candidates.map(({profile}) => profile),
    state,
  );
  const bearable = limitsOf([...own.values()]);
  const limits =
    question.warmestC === undefined ? bearable : {...bearable, high: question.warmestC, from: 'as asked'};
  const whole: Lodging[] = [];
  const some: Lodging[] = [];
  const unfit: {unit: string; why: string}[] = [];
  for (const unit of unitsNow(state)) {
    const verdict = await judged.verdict(unit, limits);
    if ('why' in verdict) unfit.push({unit: unit.code, why: verdict.why});
    else if (verdict.holds === 0) unfit.push({unit: unit.code, why: 'it is full'});
    else if (verdict.holds !== null && verdict.holds < subject.animals) some.push(verdict);
    else whole.push(verdict);
  }
  const home = state.lots.get(question.lot)?.stays.at(-1)?.unit;
  const byMerit = (a: Lodging, b: Lodging) =>
    a.from - b.from ||
    Number(b.unit === home) - Number(a.unit === home) ||
    a.beside.length - b.beside.length ||
    (b.holds ?? 0) - (a.holds ?? 0);
  whole.sort(byMerit);
  some.sort(byMerit);
  return {
    lot: question.lot,
    animals: subject.animals,
    needs: judged.needs,
    limits,
    whole,
    some,
    unfit,
    parts: whole.some(({from}) => from <= state.asOf)
      ? []
      : parted(question.lot, subject.animals, some, desk),
  };
}

/** Why a lot should not be where it was put; undefined where nothing speaks against it. */
export async function lodgingFault(desk: Desk, lot: Lot, unit: Unit): Promise<string | undefined> {
  const animals = total(lot.alive);
  const {roomOnly} = await judge(desk, {...lot, animals});
  const verdict = roomOnly(unit);
  if ('why' in verdict) return `${unit.code}: ${verdict.why}`;
  if (verdict.from > desk.now) return `${unit.code} is to be left free for some time yet`;
  if (verdict.holds !== null && verdict.holds < animals)
    return `${unit.code} has room for ${verdict.holds} of these ${animals}`;
  return undefined;
}

type Subject = Pick<Lot, 'code' | 'candidates' | 'taxon'> & {readonly animals: number};

function subjectOf({state}: Desk, {lot: code, profile, animals}: LodgingQuestion): Subject {
  const lot = state.lots.get(code);
  if (lot?.closed !== undefined) throw new Refusal(`${code} is closed`, 'plan', 'Name a lot that goes on.');
  if (lot !== undefined) return {...lot, animals: animals ?? total(lot.alive)};
  if (profile === undefined || animals === undefined)
    throw new Refusal(
      `there is no lot "${code}"`,
      'plan',
      'Of a lot to be opened say what it is and how many: --profile plecoptera --animals 20.',
    );
  return {code, candidates: [{profile, weight: 1}], taxon: undefined, animals};
}

export interface Judge {
  readonly needs: Needs;
  /** Everything but its type and temperature. */
  roomOnly(unit: Unit): Verdict;
  verdict(unit: Unit, limits: Limits): Promise<Lodging | {readonly why: string}>;
}

/**
 * What units are judged by for some animals; the profiles of those that live in the room are read once.
 * @param litresEach the room that one of them asks for, where it is not as the profile says
 */
export async function judge(desk: Desk, subject: Subject, litresEach?: number): Promise<Judge> {
  const {state, now} = desk;
  const profiles = await housingProfiles([subject, ...openLots(state)], desk);
  const known = needsOf(subject, profiles);
  const needs = litresEach === undefined ? known : {...known, litresEach};
  const kinds = subject.candidates.flatMap(({profile}) => profiles.get(profile)?.rearing ?? []);
  const courseOf = coursesOf(desk, now / MS_PER_DAY - WEEK_DAYS);
  const roomOnly = (unit: Unit): Verdict =>
    roomIn(unit, needs, tenant => needsOf(tenant, profiles), state, subject.code);
  return {
    needs,
    roomOnly,
    async verdict(unit, limits) {
      const wrong = wrongType(unit, kinds);
      if (wrong !== undefined) return {why: wrong};
      const nowDays = now / MS_PER_DAY;
      const span = {fromDays: nowDays - WEEK_DAYS, nowDays, toDays: nowDays + WEEK_DAYS};
      const course = await courseOf([{unit: unit.code, from: now - WEEK_DAYS * MS_PER_DAY}], span);
      const {dose, coveredDays} = doseBetween(course, temperatureItself, nowDays, nowDays + WEEK_DAYS);
      const expectedC = coveredDays > 0 ? dose / coveredDays : waterC(unit.code, desk);
      if (expectedC === undefined) return {why: 'its temperature is not known'};
      if (expectedC > limits.high + ROUNDING || expectedC < limits.low - ROUNDING) {
        const [word, limit] = expectedC > limits.high ? ['above', limits.high] : ['below', limits.low];
        return {why: `${expectedC.toFixed(1)} °C is ${word} ${limit} °C`};
      }
      const room = roomOnly(unit);
      return 'why' in room ? room : {unit: unit.code, place: unit.place, expectedC, ...room};
    },
  };
}

/** A mean of a course at just the limit may lie a hair beside it. */
const ROUNDING = 1e-6;

/** The water as last measured in the week before. */
function waterC(unit: string, {state, now}: Desk): number | undefined {
  return state.water.findLast(
    reading =>
      reading.unit === unit && reading.temperature !== undefined && reading.at > now - WEEK_DAYS * MS_PER_DAY,
  )?.temperature;
}

async function housingProfiles(
  lots: readonly Pick<Lot, 'candidates' | 'taxon'>[],
  {state}: Desk,
): Promise<ReadonlyMap<string, Profile>> {
  const nearer = await profilesOf(
    lots.flatMap(({candidates}) => candidates.map(({profile}) => profile)),
    state,
  );
  const wider = await profilesOf(
    lots.flatMap(lot => housingCodes(lot, nearer)),
    state,
  );
  return new Map([...nearer, ...wider]);
}

/** Into as few units as it takes, those where nobody lives first; empty where they do not hold all. What stays at home keeps its code. */
function parted(
  code: string,
  animals: number,
  some: readonly Lodging[],
  {state, now}: Desk,
): LodgingAnswer['parts'] {
  const spaces = some.flatMap(({unit, holds, from, beside}) =>
    from > now || holds === null ? [] : [{unit, holds, empty: beside.length === 0}],
  );
  const home = state.lots.get(code)?.stays.at(-1)?.unit;
  let number = 0;
  const nextCode = (): string => {
    do number++;
    while (state.lots.has(`${code}.${number}`));
    return `${code}.${number}`;
  };
  const shares = sharedOut(animals, spaces) ?? [];
  return shares.map(share => ({lot: share.unit === home ? code : nextCode(), ...share}));
}

/** Why animals that are kept in units of these types should not be in this one; undefined where nothing says so. */
export function wrongType({type}: Unit, kinds: readonly Unit['type'][]): string | undefined {
  if (kinds.length === 0 || kinds.includes(type)) return undefined;
  return `${housed(type)}, but these are kept in ${[...new Set(kinds)].map(housed).join(' or ')}`;
}

/** Of a type of unit, with its article. */
function housed(type: Unit['type']): string {
  return {cage: 'a cage', aquarium: 'an aquarium', 'emergence-box': 'an emergence box'}[type];
}
