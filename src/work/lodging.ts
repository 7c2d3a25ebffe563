// In which units animals could live, now or soon, and how a lot is parted where none holds it whole.
import {
  type Fault,
  faultsOf,
  housingCodes,
  type Needs,
  type Newcomers,
  nearestProfiles,
  needsOf,
  type Room,
  rearedIn,
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
import {type CourseOf, coursesOf} from './courses.ts';
import type {Desk} from './desk.ts';
import {profilesOf} from './profiles.ts';

export interface LodgingQuestion {
  /** A lot of the room, or the code that one to be opened will have. */
  readonly lot: string;
  /** Of a lot to be opened: what it is, and how many animals. */
  readonly profile?: string | undefined;
  readonly animals?: number | undefined;
  /** What they need, where it is not as is kept with the lot or as the profile says. */
  readonly needs?: Lot['needs'];
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
  /** Of these needs, what the question itself said. */
  readonly asked: Lot['needs'];
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
  const judged = await judge(desk, subject);
  const {coolestC, warmestC} = question.needs ?? {};
  const limits =
    coolestC === undefined && warmestC === undefined ? judged.limits : {...judged.limits, from: 'as asked'};
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
    asked: question.needs,
    limits,
    whole,
    some,
    unfit,
    parts: whole.some(({from}) => from <= state.asOf)
      ? []
      : parted(question.lot, subject.animals, some, desk),
  };
}

/** Animals that are to live somewhere. */
export type Subject = Pick<Lot, 'code' | 'candidates' | 'taxon' | 'needs' | 'alive' | 'material'> & {
  readonly animals: number;
};

/** All that speaks against a unit in which animals are put now. Where its temperature is not known, that says nothing. */
export async function lodgingFaults(
  desk: Desk,
  subject: Subject & Pick<Newcomers, 'joins'>,
  unit: Unit,
  grounds?: Grounds,
): Promise<Fault[]> {
  const {needs, limits, kinds, faults, expectedC} = await judge(desk, subject, grounds);
  const expected = await expectedC(unit);
  const type = wrongType(unit, kinds, subject);
  const isTooWarm = expected !== undefined && expected > limits.high + ROUNDING;
  // Cold is given to many on purpose, for a while: only what was said of these binds.
  const isTooCold =
    expected !== undefined && needs.coolestC !== undefined && expected < needs.coolestC - ROUNDING;
  return [
    ...(type === undefined ? [] : [{what: type, harms: isOutOfItsElement(unit, kinds)}]),
    ...(isTooWarm || isTooCold ? [{what: degreesWords(expected, limits), harms: true}] : []),
    ...faults(unit),
  ];
}

function subjectOf({state}: Desk, {lot: code, profile, animals, needs}: LodgingQuestion): Subject {
  const lot = state.lots.get(code);
  if (lot?.closed !== undefined) throw new Refusal(`${code} is closed`, 'plan', 'Name a lot that goes on.');
  if (lot !== undefined)
    return {...lot, animals: animals ?? total(lot.alive), needs: {...lot.needs, ...needs}};
  if (profile === undefined || animals === undefined)
    throw new Refusal(
      `there is no lot "${code}"`,
      'plan',
      'Of a lot to be opened say what it is and how many: --profile plecoptera --animals 20.',
    );
  return {
    code,
    candidates: [{profile, weight: 1}],
    taxon: undefined,
    needs,
    alive: {},
    material: undefined,
    animals,
  };
}

export interface Judge {
  readonly needs: Needs;
  readonly limits: Limits;
  /** The types of unit that they are kept in. */
  readonly kinds: readonly Unit['type'][];
  /** All but its type and temperature that speaks against putting them into a unit now. */
  faults(unit: Unit): Fault[];
  /** The mean of the week to come, undefined where nobody knows. */
  expectedC(unit: Unit): Promise<number | undefined>;
  /** Everything but its type and temperature. */
  roomOnly(unit: Unit): Verdict;
  verdict(unit: Unit, limits: Limits): Promise<Lodging | {readonly why: string}>;
}

/** What is read of a room once, however many lots are judged. */
export interface Grounds {
  readonly profiles: ReadonlyMap<string, Profile>;
  /** Undefined where the warmth of units is not asked about. */
  readonly courseOf: CourseOf | undefined;
}

/** For lots of the room and for those named, which need not be in it. */
export async function groundsOf(
  desk: Desk,
  {subjects = [], warmth = true}: {readonly subjects?: readonly Subject[]; readonly warmth?: boolean},
): Promise<Grounds> {
  return {
    profiles: await housingProfiles([...subjects, ...openLots(desk.state)], desk),
    courseOf: warmth ? coursesOf(desk, desk.now / MS_PER_DAY - WEEK_DAYS) : undefined,
  };
}

/** What units are judged by for some animals. */
export async function judge(
  desk: Desk,
  subject: Subject & Pick<Newcomers, 'joins'>,
  grounds?: Grounds,
): Promise<Judge> {
  const {state, now} = desk;
  const {profiles, courseOf} = grounds ?? (await groundsOf(desk, {subjects: [subject]}));
  const needs = needsOf(subject, profiles);
  const kinds = rearedIn(subject, profiles);
  const limits = limitsOf(nearestProfiles(subject, profiles), subject.needs);
  const needsOfTenant = (tenant: Lot) => needsOf(tenant, profiles);
  const roomOnly = (unit: Unit): Verdict => roomIn(unit, needs, needsOfTenant, state, subject.code);
  const expectedC = async (unit: Unit): Promise<number | undefined> => {
    if (courseOf === undefined) return undefined;
    const nowDays = now / MS_PER_DAY;
    const span = {fromDays: nowDays - WEEK_DAYS, nowDays, toDays: nowDays + WEEK_DAYS};
    const course = await courseOf([{unit: unit.code, from: now - WEEK_DAYS * MS_PER_DAY}], span);
    const {dose, coveredDays} = doseBetween(course, temperatureItself, nowDays, nowDays + WEEK_DAYS);
    return coveredDays > 0 ? dose / coveredDays : waterC(unit.code, desk);
  };
  return {
    needs,
    limits,
    kinds,
    roomOnly,
    expectedC,
    faults: unit => faultsOf(unit, subject, needs, needsOfTenant, state),
    async verdict(unit, within) {
      const wrong = wrongType(unit, kinds, subject);
      if (wrong !== undefined) return {why: wrong};
      const expected = await expectedC(unit);
      if (expected === undefined) return {why: 'its temperature is not known'};
      if (expected > within.high + ROUNDING || expected < within.low - ROUNDING)
        return {why: degreesWords(expected, within)};
      const room = roomOnly(unit);
      return 'why' in room ? room : {unit: unit.code, place: unit.place, expectedC: expected, ...room};
    },
  };
}

function degreesWords(expectedC: number, {low, high}: Limits): string {
  const [word, limit] = expectedC > high ? ['above', high] : ['below', low];
  return `${expectedC.toFixed(1)} °C is ${word} ${limit} °C`;
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

/**
 * Why animals that are kept in units of these types should not be in this one; undefined where nothing says so. What is
 * hidden, and what rests until adults come out, may be in a box (common practice, no source).
 */
export function wrongType(
  {type}: Unit,
  kinds: readonly Unit['type'][],
  {alive, material}: Pick<Lot, 'alive' | 'material'>,
): string | undefined {
  if (kinds.length === 0 || kinds.includes(type)) return undefined;
  const stages = Object.keys(alive);
  const isAtRest = stages.length > 0 && stages.every(stage => stage === 'pupa' || stage === 'prepupa');
  if (type === 'emergence-box' && (material !== undefined || isAtRest)) return undefined;
  return `${housed(type)}, but these are kept in ${[...new Set(kinds)].map(housed).join(' or ')}`;
}

/** Water for what lives on land, or land for what lives in water. */
function isOutOfItsElement({type}: Unit, kinds: readonly Unit['type'][]): boolean {
  return type === 'aquarium' || kinds.every(kind => kind === 'aquarium');
}

/** Of a type of unit, with its article. */
function housed(type: Unit['type']): string {
  return {cage: 'a cage', aquarium: 'an aquarium', 'emergence-box': 'an emergence box'}[type];
}
