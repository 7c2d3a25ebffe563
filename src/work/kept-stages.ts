// In which stages animals that are fed are to be on the days ahead, kept in the room's cache beside what is expected of
// their emergence: the same forecast tells both.
import {hasFeeders} from '../care/stages.ts';
import type {LotForecast, StageShares} from '../development/answer.ts';
import type {Day} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {type Lot, openLots} from '../records/state.ts';
import {readCache, writeCache} from '../room/cache.ts';
import type {Desk} from './desk.ts';

/** What is fed later than in a fortnight is not picked yet. */
const DAYS = 14;
const CACHE_NAME = 'stages-ahead';

export type SharesByDay = Readonly<Record<Day, StageShares>>;

/** By lot. */
export type KeptStages = Readonly<
  Record<
    string,
    {
      /** Of everything the forecast rests on. */
      readonly of: string | undefined;
      /** None where the lot has no forecast. */
      readonly shares: SharesByDay;
    }
  >
>;

/** The days that are asked about, from today on. */
export function stageDays({civil, now}: Pick<Desk, 'civil' | 'now'>): Day[] {
  return Array.from({length: DAYS}, (_, i) => civil.addDays(civil.dayOf(now), i));
}

/** The cache is the program's own and sealed with a checksum; a damaged one reads as nothing. */
export async function keptStages({room}: Pick<Desk, 'room'>): Promise<KeptStages> {
  return ((await readCache(room, CACHE_NAME)) ?? {}) as KeptStages;
}

/**
 * Keep what new forecasts say, beside what is kept of the room's other open lots.
 * @param forecasts each with shares on `stageDays`
 * @returns all that is kept now
 */
export async function keepStages(
  desk: Desk,
  forecasts: ReadonlyMap<Lot, LotForecast>,
  prints: ReadonlyMap<string, string>,
): Promise<KeptStages> {
  const before = await keptStages(desk);
  const {civil, state} = desk;
  const all: Record<string, KeptStages[string]> = {};
  for (const lot of openLots(state)) {
    const forecast = forecasts.get(lot);
    if (forecast === undefined || !hasFeeders(lot)) {
      if (before[lot.code] !== undefined) all[lot.code] = before[lot.code]!;
      continue;
    }
    const told = forecast.status === 'unknown' ? [] : forecast.stageShares;
    const shares = told.map(({atDays, shares: onDay}) => [civil.dayOf(atDays * MS_PER_DAY), onDay]);
    all[lot.code] = {of: prints.get(lot.code), shares: Object.fromEntries(shares)};
  }
  await writeCache(desk.room, CACHE_NAME, all);
  return all;
}
