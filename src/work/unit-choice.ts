// Which units of a room a lot could live in, and when its adults would be there.
import {groupsOf} from '../care/groups.ts';
import {nearestRules} from '../care/nearest.ts';
import {rulesInForce} from '../care/start-rules.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Profile} from '../records/schema/index.ts';
import {inOrder, total} from '../records/stage.ts';
import {type Lot, openLots, type Unit, valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {type Judge, judge, wrongType} from './lodging.ts';
import type {Outlook} from './outlook.ts';
import {profilesOf} from './profiles.ts';

export interface UnitChoice {
  readonly unit: string;
  readonly place: string;
  /** Its temperature in the week to come. */
  readonly expectedC: number;
  /** From when it is free. */
  readonly from: Instant;
  /** When the share that is wanted would be out there. */
  readonly at: Instant | null;
  /** When half would be. */
  readonly p50: Instant | null;
}

export interface UnitChoices {
  /** The best first: the latest of those in time, then the soonest of the others. */
  readonly units: readonly UnitChoice[];
  readonly unfit: readonly {readonly unit: string; readonly why: string}[];
}

/**
 * The units in which a lot could live, as they stand now. The type and the water of a unit fit the animals' profiles,
 * its temperature their limits, and what lives there eats by the same rule.
 * @param limit until when the adults are wanted
 * @param outlookIn the outlook of the lot if it lived so; its first chance is the share that is wanted, its second a half
 */
export async function unitsFor(
  lot: Lot,
  desk: Desk,
  own: ReadonlyMap<string, Profile>,
  limits: {readonly low: number; readonly high: number},
  limit: Instant,
  outlookIn: (stays: Lot['stays']) => Promise<Outlook>,
): Promise<UnitChoices> {
  const {state, now} = desk;
  const units: UnitChoice[] = [];
  const unfit: {unit: string; why: string}[] = [];
  const codes = openLots(state).flatMap(({candidates}) => candidates.map(({profile}) => profile));
  const profiles = await profilesOf(codes, state);
  const home = lot.stays.at(-1)?.unit;
  const judged = await judge(desk, {...lot, animals: total(lot.alive)});
  for (const history of state.units.values()) {
    const unit = valueAt(history, now);
    const {code, place} = unit;
    const room = whyUnfit(lot, unit, state, own, profiles, judged);
    if ('why' in room) {
      unfit.push({unit: code, why: room.why});
      continue;
    }
    const {from} = room;
    const stays = code === home ? lot.stays : [...lot.stays, {unit: code, from}];
    const {forecast, expectedC} = await outlookIn(stays);
    const [at, p50] = forecast.atChances.map(days => (days === null ? null : days * MS_PER_DAY));
    if (expectedC === null) unfit.push({unit: code, why: 'its temperature is not known'});
    else if (expectedC < limits.low || expectedC > limits.high)
      unfit.push({
        unit: code,
        why: `${expectedC.toFixed(1)} °C lies outside ${limits.low} to ${limits.high} °C`,
      });
    else units.push({unit: code, place, from, expectedC, at: at ?? null, p50: p50 ?? null});
  }
  return {units: units.sort(byMerit(limit)), unfit};
}

function byMerit(limit: Instant): (a: UnitChoice, b: UnitChoice) => number {
  const when = ({at}: UnitChoice) => at ?? Number.MAX_VALUE;
  return (a, b) => {
    const [x, y] = [when(a), when(b)];
    return x <= limit && y <= limit ? y - x : x - y;
  };
}

/** Since when a lot could live in a unit, or why it could not. */
function whyUnfit(
  lot: Lot,
  unit: Unit,
  state: Desk['state'],
  own: ReadonlyMap<string, Profile>,
  profiles: ReadonlyMap<string, Profile>,
  judged: Judge,
): {readonly from: Instant} | {readonly why: string} {
  const wrong = wrongType(
    unit,
    [...own.values()].flatMap(({rearing}) => rearing),
    lot,
  );
  if (wrong !== undefined) return {why: wrong};
  if (unit.code === lot.stays.at(-1)?.unit) return {from: state.asOf};
  const room = judged.roomOnly(unit);
  if ('why' in room) return room;
  const animals = total(lot.alive);
  if (room.holds !== null && room.holds < animals) return {why: `it holds ${room.holds} of ${animals}`};
  // Where it is known that nobody there eats the others, each may have its own food.
  if (room.beside.length > 0 && judged.needs.known) return room;
  const food = foodOf(lot, unit, state, profiles);
  const stranger = openLots(state).find(
    other =>
      other.code !== lot.code &&
      other.stays.at(-1)?.unit === unit.code &&
      foodOf(other, unit, state, profiles) !== food,
  );
  return stranger === undefined ? room : {why: `${stranger.code} lives there on other food`};
}

/** The rule by which a lot would be fed in a unit: lots under one rule eat alike. */
function foodOf(
  lot: Lot,
  {code, type}: Unit,
  state: Desk['state'],
  profiles: ReadonlyMap<string, Profile>,
): string | undefined {
  const groups = groupsOf(lot, profiles, state.samples.get(lot.sample));
  const stages = inOrder(lot.alive).map(([stage]) => stage);
  const housed = {...groups, lot: lot.code, unit: code, type, stages};
  return nearestRules(rulesInForce(state.rules, profiles), housed).find(({task}) => task === 'feed')?.code;
}
