// Water that its animals cannot bear, by the last measurement of each thing.
import {UNIONISED_MG_L, unionisedShare} from '../climate/ammonia.ts';
import {heaviestFirst} from '../records/candidates.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Lot, WaterReading} from '../records/state.ts';
import type {Alert} from './alert.ts';
import {grouped} from './grouped.ts';
import {unitOf} from './occupancy.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {whenWords} from './when-words.ts';

/** A measurement older than that says nothing of now. Common practice, no source. */
const HOLDS_MS = 7 * MS_PER_DAY;

export interface WaterLimit {
  readonly name: string;
  readonly unit: string;
  readonly low?: number;
  readonly high?: number;
  readonly mend: string;
}

const change = 'Change part of the water with matured water, feed less, and measure again.';

/**
 * Where the profile of a lot names none. Oxygen: some impairment of invertebrates below 5 mg/L, EPA 440/5-86-003 (from
 * memory). Un-ionised ammonia: see climate/ammonia.ts. pH and nitrite: common practice, no source.
 */
export const usualWaterLimits = {
  oxygenMgL: {
    name: 'oxygen',
    unit: 'mg/L',
    low: 5,
    mend: 'Aerate now, take out decaying food, cool the water.',
  },
  ph: {name: 'pH', unit: '', low: 6, high: 9, mend: change},
  unionisedMgL: {name: 'un-ionised ammonia', unit: 'mg/L', high: UNIONISED_MG_L.harm, mend: change},
  nitriteMgL: {name: 'nitrite', unit: 'mg/L', high: 0.5, mend: change},
  conductivityUScm: {name: 'conductivity', unit: 'µS/cm', mend: change},
  hardnessMgL: {name: 'hardness', unit: 'mg/L', mend: change},
} as const satisfies Readonly<Record<string, WaterLimit>>;

export type WaterMeasure = keyof typeof usualWaterLimits;

/** One alert for each thing that is wrong in the water of a unit with living lots. */
export function badWater(input: CareInput): Alert[] {
  const {state, profiles, civil, now} = input;
  const living = [...state.lots.values()].filter(isLiving);
  return [...grouped(living, lot => lot.stays.at(-1)?.unit ?? '')].flatMap(([code, lots]) => {
    if (unitOf(lots[0]!, state)?.type !== 'aquarium') return [];
    const readings = state.water.filter(({unit}) => unit === code).sort((a, b) => a.at - b.at);
    return (Object.keys(usualWaterLimits) as WaterMeasure[]).flatMap(measure => {
      const values = readings.flatMap(reading => measuredIn(reading, measure));
      const last = values.at(-1);
      if (last === undefined || last.at < now - HOLDS_MS) return [];
      const limit = limitFor(measure, lots, profiles);
      const beyond = ({value}: Measured) => value < (limit.low ?? value) || value > (limit.high ?? value);
      if (!beyond(last)) return [];
      const {at: since} = values[values.findLastIndex(each => !beyond(each)) + 1]!;
      const isLow = last.value < (limit.low ?? last.value);
      const side = isLow ? `below ${limit.low}` : `above ${limit.high}`;
      const unit = limit.unit === '' ? '' : ` ${limit.unit}`;
      return [
        {
          id: `water-${measure}:${code}:${civil.dayOf(since)}`,
          what: `${limit.name} in ${code} is too ${isLow ? 'low' : 'high'} for ${lots.map(lot => lot.code).join(', ')}: ${rounded(last.value)}${unit} ${whenWords(last.at, now, civil)}, ${side}${unit}`,
          where: code,
          since,
          mend: limit.mend,
        },
      ];
    });
  });
}

interface Measured {
  readonly at: Instant;
  readonly value: number;
}

/** A field as measured; the un-ionised part of ammonia where temperature and pH were measured with it. */
function measuredIn({at, temperature, values}: WaterReading, measure: WaterMeasure): Measured[] {
  if (measure !== 'unionisedMgL') return values[measure] === undefined ? [] : [{at, value: values[measure]}];
  const {ammoniaMgL, ph} = values;
  return ammoniaMgL === undefined || ph === undefined || temperature === undefined
    ? []
    : [{at, value: ammoniaMgL * unionisedShare(temperature, ph)}];
}

/** The narrowest that a candidate of a lot asks for, else the usual one. */
function limitFor(measure: WaterMeasure, lots: readonly Lot[], profiles: CareInput['profiles']): WaterLimit {
  const usual: WaterLimit = usualWaterLimits[measure];
  const own = lots.flatMap(
    ({candidates}) =>
      heaviestFirst(candidates)
        .map(({profile}) => profiles.get(profile)?.limits.water?.[measure])
        .find(limit => limit !== undefined) ?? [],
  );
  const lows = own.flatMap(({low}) => low ?? []);
  const highs = own.flatMap(({high}) => high ?? []);
  return {
    ...usual,
    ...(lows.length > 0 ? {low: Math.max(...lows)} : {}),
    ...(highs.length > 0 ? {high: Math.min(...highs)} : {}),
  };
}

function rounded(value: number): number {
  return Number(value.toPrecision(3));
}
