// The food of the days ahead, as counted and as the animals are to have grown by then.

import type {Ration} from '../care/amounts.ts';
import {type FeedingDay, type FoodAhead, foodAhead} from '../care/food-ahead.ts';
import {grownStages} from '../care/grown-stages.ts';
import type {StageShares} from '../development/answer.ts';
import type {Day} from '../records/civil.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {RoomState} from '../records/state.ts';
import {readCache, writeCache} from '../room/cache.ts';
import type {Ahead, PlannedItem} from './ahead.ts';
import type {Desk} from './desk.ts';
import {fingerprintOf, fingerprintOfRoom} from './expectations.ts';
import {forecaster} from './outlook.ts';

/** Further ahead than this nobody is said to have grown: what is fed then is not picked yet, and forecasts cost time. */
const GROWN_DAYS = 14;

export async function foodOfDays(desk: Desk, {days}: Ahead): Promise<FoodAhead> {
  const shares = await sharesOf(desk, days);
  return foodAhead(
    days.map(
      ({day, open, items}): FeedingDay => ({
        day,
        open,
        feedings: items
          .filter(({task}) => task === 'feed')
          .map(item => ({
            unit: item.unit,
            lot: item.lot,
            food: item.food,
            grown: grownAmount(item, day, shares, desk.state),
            plant: isLeaf(item.food) ? plantOf(item.lot, desk.state) : null,
          })),
      }),
    ),
  );
}

type SharesByDay = Readonly<Record<Day, StageShares>>;
type SharesByLot = ReadonlyMap<string, SharesByDay>;

/** Forecasts take time: they are kept while nothing they rest on changes, for as many days as were asked for. */
const CACHE_NAME = 'stages-ahead';

interface Kept {
  readonly of: string;
  readonly shares: SharesByDay;
}

/** In which stages the animals of the lots that are fed by number are to be, by lot and day. */
async function sharesOf(desk: Desk, days: Ahead['days']): Promise<SharesByLot> {
  const {state, civil} = desk;
  if (days.length > GROWN_DAYS) return new Map();
  const fed = new Set(
    days.flatMap(({items}) =>
      items.flatMap(({lot, task, food}) =>
        task !== 'feed' || food === null || food.inAll || lot === null ? [] : [lot],
      ),
    ),
  );
  const lots = [...fed].flatMap(code => state.lots.get(code) ?? []);
  if (lots.length === 0) return new Map();
  const asked = days.map(({day}) => day);
  const shared = fingerprintOfRoom(desk);
  const kept = ((await readCache(desk.room, CACHE_NAME)) ?? {}) as Readonly<Record<string, Kept>>;
  const prints = new Map(lots.map(lot => [lot, fingerprintOf(lot, `${shared} ${asked.length}`, desk)]));
  const stale = lots.filter(lot => kept[lot.code]?.of !== prints.get(lot));
  const forecastOf = forecaster(desk, stale, {sharesOn: asked, futures: 0});
  const fresh = new Map(await Promise.all(stale.map(async lot => [lot, await forecastOf(lot)] as const)));
  const all = lots.map(lot => {
    const forecast = fresh.get(lot);
    if (forecast === undefined) return [lot.code, kept[lot.code]!] as const;
    const told = forecast.status === 'unknown' ? [] : forecast.stageShares;
    const shares = told.map(({atDays, shares}) => [civil.dayOf(atDays * MS_PER_DAY), shares] as const);
    return [lot.code, {of: prints.get(lot)!, shares: Object.fromEntries(shares)}] as const;
  });
  if (stale.length > 0) await writeCache(desk.room, CACHE_NAME, Object.fromEntries(all));
  return new Map(all.map(([code, {shares}]) => [code, shares]));
}

function grownAmount(
  {lot, rationOf}: PlannedItem,
  day: Day,
  shares: SharesByLot,
  {lots}: RoomState,
): number | null {
  const onDay = shares.get(lot ?? '')?.[day];
  const alive = lots.get(lot ?? '')?.alive;
  if (onDay === undefined || alive === undefined || Object.keys(onDay).length === 0) return null;
  return rationOf(grownStages(alive, onDay))?.amount ?? 0;
}

function isLeaf(food: Ration | null): boolean {
  return food !== null && /\b(leaf|leaves|foliage)\b/.test(food.of);
}

/** The plant that a lot's animals were found on. */
function plantOf(lot: string | null, {lots, samples}: RoomState): string | null {
  return samples.get(lots.get(lot ?? '')?.sample ?? '')?.host ?? null;
}
