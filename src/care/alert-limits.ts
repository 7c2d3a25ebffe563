// Units that are now too warm, too cold, too dry or too damp for those who live in them.
import {heaviestFirst} from '../records/candidates.ts';
import type {Profile} from '../records/schema/index.ts';
import {inOrder} from '../records/stage.ts';
import type {Lot, Unit} from '../records/state.ts';
import {landmarksOf} from '../thermal/rate-model.ts';
import type {Alert, ReadingNow, RoomFacts} from './alert.ts';
import {excursionUpTo} from './excursion.ts';
import {grouped} from './grouped.ts';
import {unitOf} from './occupancy.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {whenWords} from './when-words.ts';

type Limits = Profile['limits'];

/** At most one alert of warmth, of standstill and of dampness for each unit, for the lot that bears least. */
export function outOfLimits(input: CareInput, {climate}: RoomFacts): Alert[] {
  const {state, profiles} = input;
  const living = [...state.lots.values()].filter(isLiving);
  return [...grouped(living, lot => lot.stays.at(-1)?.unit ?? '')].flatMap(([code, lots]) => {
    const reading = climate.get(code);
    const unit = unitOf(lots[0]!, state);
    if (reading === undefined || unit === undefined) return [];
    const housed = lots.map(lot => housedIn(lot, profiles));
    return [
      warmth(housed, unit, reading, input),
      standstill(housed, unit, reading, input),
      dampness(housed, unit, reading, input),
    ].filter(alert => alert !== undefined);
  });
}

interface Housed {
  readonly lot: Lot;
  readonly limits: Limits;
  /** Below it, and above it, its stage does not develop; undefined where nobody knows. */
  readonly developsFromC: number | undefined;
  readonly developsToC: number | undefined;
}

/** The limits of the heaviest candidate that has any; those of development of its present stage. */
function housedIn(lot: Lot, profiles: ReadonlyMap<string, Profile>): Housed {
  const known = heaviestFirst(lot.candidates).flatMap(({profile}) => profiles.get(profile) ?? []);
  const stage = inOrder(lot.alive)[0]?.[0];
  const [likeliest] = known;
  const model =
    likeliest === undefined || 'variation' in likeliest || 'undated' in likeliest
      ? undefined
      : likeliest.stages.find(each => each.stage === stage)?.rate;
  const ends = model === undefined ? undefined : landmarksOf(model);
  return {
    lot,
    limits: {
      temperature: known.find(({limits}) => limits.temperature !== undefined)?.limits.temperature,
      humidity: known.find(({limits}) => limits.humidity !== undefined)?.limits.humidity,
    },
    developsFromC: ends?.lowerC ?? undefined,
    developsToC: ends?.upperC ?? undefined,
  };
}

function warmth(
  housed: readonly Housed[],
  unit: Unit,
  reading: ReadingNow,
  {civil, now}: CareInput,
): Alert | undefined {
  const {at, temperatureC, recent} = reading;
  if (temperatureC === undefined) return undefined;
  const said = `${round(temperatureC)} °C ${whenWords(at, now, civil)}`;
  const told = (
    side: 1 | -1,
    limitC: number,
    lot: Lot,
    kills: string,
    isDeadly: boolean,
    mend: string,
  ): Alert => {
    const {since, words} = howLong(
      reading,
      recent?.temperatureC ?? [],
      value => (value - limitC) * side,
      'degree',
    );
    const kind = isDeadly ? 'lethal' : 'temperature';
    const what = `${unit.code} is too ${side === 1 ? 'warm' : 'cold'} for ${lot.code}: ${said}, ${side === 1 ? 'above' : 'below'} ${limitC} °C${words}${kills}`;
    return {id: `${kind}:${unit.code}:${civil.dayOf(since)}`, what, where: unit.code, since, mend};
  };
  for (const {lot, limits, developsToC} of housed) {
    const {lethalHigh, lethalLow} = limits.temperature ?? {};
    const {high = developsToC, low} = {...limits.temperature, ...saidOf(lot)};
    const upper = high ?? lethalHigh;
    if (upper !== undefined && temperatureC > upper) {
      const isDeadly = lethalHigh !== undefined && temperatureC >= lethalHigh;
      const kills = isDeadly ? `; ${lethalHigh} °C kills` : '';
      const mend = 'Move the lot or shade and cool the unit, then check the reading at animal height.';
      return told(1, upper, lot, kills, isDeadly, mend);
    }
    const lower = isChilledOnPurpose(unit, low) ? lethalLow : (low ?? lethalLow);
    if (lower !== undefined && temperatureC < lower) {
      const isDeadly = lethalLow !== undefined && temperatureC <= lethalLow;
      const kills = isDeadly ? `; ${lethalLow} °C kills` : '';
      const mend =
        'Look at the heater and its setting, or move the lot; a chill period belongs in the unit’s set points.';
      return told(-1, lower, lot, kills, isDeadly, mend);
    }
  }
  return undefined;
}

/** What was said of the lot itself goes before its profile. */
function saidOf({needs}: Lot): {readonly high?: number; readonly low?: number} {
  const {warmestC, coolestC} = needs ?? {};
  return {
    ...(warmestC === undefined ? {} : {high: warmestC}),
    ...(coolestC === undefined ? {} : {low: coolestC}),
  };
}

/** A cold night stops development and harms nobody; days of it are a heater that failed. Common practice, no source. */
const STANDSTILL_HOURS = 48;

/** No lot of the unit has developed for two days although nobody chills it. */
function standstill(
  housed: readonly Housed[],
  unit: Unit,
  reading: ReadingNow,
  {civil}: CareInput,
): Alert | undefined {
  const {temperatureC, recent} = reading;
  const lower = Math.min(...housed.map(({developsFromC = Number.NEGATIVE_INFINITY}) => developsFromC));
  if (temperatureC === undefined || !Number.isFinite(lower) || isChilledOnPurpose(unit, lower))
    return undefined;
  const {since, hours} = excursionUpTo(
    reading.at,
    recent,
    recent?.temperatureC ?? [],
    value => lower - value,
  );
  if (hours < STANDSTILL_HOURS) return undefined;
  return {
    id: `standstill:${unit.code}:${civil.dayOf(since)}`,
    what: `nothing in ${unit.code} has developed for ${Math.round(hours)} h: it was never above ${lower} °C`,
    where: unit.code,
    since,
    mend: 'Warm it, move the lots, or write the chill into the unit’s set points.',
  };
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
  const {at, rhPercent, recent} = reading;
  if (rhPercent === undefined || unit.type === 'aquarium') return undefined;
  for (const {lot, limits} of housed) {
    if (limits.humidity === undefined) continue;
    const {low, high} = limits.humidity;
    if (rhPercent >= low && rhPercent <= high) continue;
    const dry = rhPercent < low;
    const beyond = (value: number) => (dry ? low - value : value - high);
    const {since, words} = howLong(reading, recent?.rhPercent ?? [], beyond, 'per cent');
    return {
      id: `humidity:${unit.code}:${civil.dayOf(since)}`,
      what: `${unit.code} is too ${dry ? 'dry' : 'damp'} for ${lot.code}: ${round(rhPercent)} % ${whenWords(at, now, civil)}, ${dry ? `below ${low}` : `above ${high}`} %${words}`,
      where: unit.code,
      since,
      mend: dry ? 'Moisten, or close part of the mesh.' : 'Air it and wipe condensation; look for mould.',
    };
  }
  return undefined;
}

/** ", for 5 h, 9.2 degree-hours": since when, and what dose. Nothing is said of a first reading beyond. */
function howLong(
  {at, recent}: ReadingNow,
  values: readonly number[],
  beyond: (value: number) => number,
  unit: string,
) {
  const {since, hours, dose, isWhole} = excursionUpTo(at, recent, values, beyond);
  const words =
    hours < 0.1 ? '' : `, for ${isWhole ? '' : 'over '}${round(hours)} h, ${round(dose)} ${unit}-hours`;
  return {since, words};
}

function round(value: number): number {
  return Math.round(value * 10) / 10;
}
