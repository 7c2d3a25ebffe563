// Units that are now too warm, too cold, too dry or too damp for those who live in them.
import {heaviestFirst} from '../records/candidates.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot, Unit} from '../records/state.ts';
import type {Alert, ReadingNow, RoomFacts} from './alert.ts';
import {grouped} from './grouped.ts';
import {unitOf} from './occupancy.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {whenWords} from './when-words.ts';

type Limits = Profile['limits'];

/** At most one alert of warmth and one of dampness for each unit, for the lot that bears least. */
export function outOfLimits(input: CareInput, {climate}: RoomFacts): Alert[] {
  const {state, profiles} = input;
  const living = [...state.lots.values()].filter(isLiving);
  return [...grouped(living, lot => lot.stays.at(-1)?.unit ?? '')].flatMap(([code, lots]) => {
    const reading = climate.get(code);
    const unit = unitOf(lots[0]!, state);
    if (reading === undefined || unit === undefined) return [];
    const housed = lots.map(lot => ({lot, limits: limitsOf(lot, profiles)}));
    return [warmth(housed, unit, reading, input), dampness(housed, unit, reading, input)].filter(
      alert => alert !== undefined,
    );
  });
}

interface Housed {
  readonly lot: Lot;
  readonly limits: Limits;
}

/** Those of the heaviest candidate that has any. */
function limitsOf({candidates}: Lot, profiles: ReadonlyMap<string, Profile>): Limits {
  const known = heaviestFirst(candidates).map(({profile}) => profiles.get(profile)?.limits ?? {});
  return {
    temperature: known.find(({temperature}) => temperature !== undefined)?.temperature,
    humidity: known.find(({humidity}) => humidity !== undefined)?.humidity,
  };
}

function warmth(
  housed: readonly Housed[],
  unit: Unit,
  reading: ReadingNow,
  {civil, now}: CareInput,
): Alert | undefined {
  const {at, temperatureC} = reading;
  if (temperatureC === undefined) return undefined;
  const said = `${round(temperatureC)} °C ${whenWords(at, now, civil)}`;
  for (const {lot, limits} of housed) {
    const {high, lethalHigh, low, lethalLow} = limits.temperature ?? {};
    const id = `temperature:${unit.code}:${civil.dayOf(at)}`;
    if (temperatureC > (high ?? lethalHigh ?? Number.POSITIVE_INFINITY))
      return {
        id,
        what: `${unit.code} is too warm for ${lot.code}: ${said}, above ${high ?? lethalHigh} °C${kills(temperatureC >= (lethalHigh ?? 99), lethalHigh)}`,
        where: unit.code,
        since: at,
        mend: 'Move the lot or shade and cool the unit, then check the reading at animal height.',
      };
    const chilled = isChilledOnPurpose(unit, low);
    const bound = chilled ? lethalLow : (low ?? lethalLow);
    if (temperatureC < (bound ?? Number.NEGATIVE_INFINITY))
      return {
        id,
        what: `${unit.code} is too cold for ${lot.code}: ${said}, below ${bound} °C${kills(temperatureC <= (lethalLow ?? -99), lethalLow)}`,
        where: unit.code,
        since: at,
        mend: 'Look at the heater and its setting, or move the lot; a chill period belongs in the unit’s set points.',
      };
  }
  return undefined;
}

function kills(deadly: boolean, limitC: number | undefined): string {
  return deadly && limitC !== undefined ? `; ${limitC} °C kills` : '';
}

/** The unit is set below what the animals like: their winter. */
function isChilledOnPurpose({setPoints}: Unit, low: number | undefined): boolean {
  return low !== undefined && setPoints !== undefined && 'constant' in setPoints && setPoints.constant < low;
}

function dampness(
  housed: readonly Housed[],
  unit: Unit,
  reading: ReadingNow,
  {civil, now}: CareInput,
): Alert | undefined {
  const {at, rhPercent} = reading;
  if (rhPercent === undefined || unit.type === 'aquarium') return undefined;
  for (const {lot, limits} of housed) {
    if (limits.humidity === undefined) continue;
    const {low, high} = limits.humidity;
    if (rhPercent >= low && rhPercent <= high) continue;
    const dry = rhPercent < low;
    return {
      id: `humidity:${unit.code}:${civil.dayOf(at)}`,
      what: `${unit.code} is too ${dry ? 'dry' : 'damp'} for ${lot.code}: ${round(rhPercent)} % ${whenWords(at, now, civil)}, ${dry ? `below ${low}` : `above ${high}`} %`,
      where: unit.code,
      since: at,
      mend: dry ? 'Moisten, or close part of the mesh.' : 'Air it and wipe condensation; look for mould.',
    };
  }
  return undefined;
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
