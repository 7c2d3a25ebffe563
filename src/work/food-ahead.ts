// The food of the days ahead, as counted and as the animals are to have grown by then.

import type {Ration} from '../care/amounts.ts';
import {type FeedingDay, type FoodAhead, foodAhead} from '../care/food-ahead.ts';
import {grownStages} from '../care/grown-stages.ts';
import type {Day} from '../records/civil.ts';
import type {Lot, RoomState} from '../records/state.ts';
import type {Ahead, PlannedItem} from './ahead.ts';
import type {Desk} from './desk.ts';
import {fingerprintOf, fingerprintOfRoom} from './expectations.ts';
import {type KeptStages, keepStages, keptStages, type SharesByDay, stageDays} from './kept-stages.ts';
import {forecaster} from './outlook.ts';

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

type SharesByLot = ReadonlyMap<string, SharesByDay>;

/** In which stages the animals of the lots that are fed by number are to be, by lot and day. */
async function sharesOf(desk: Desk, days: Ahead['days']): Promise<SharesByLot> {
  const {lots} = desk.state;
  if (days.length > stageDays(desk).length) return new Map();
  const fed = days.flatMap(({items}) =>
    items.flatMap(({lot, task, food}) =>
      task !== 'feed' || food === null || food.inAll ? [] : (lots.get(lot ?? '') ?? []),
    ),
  );
  const kept = await keptOf([...new Set(fed)], desk);
  return new Map(fed.map(({code}) => [code, kept[code]?.shares ?? {}]));
}

/** Kept since the care list asked for its forecasts; forecast now where that is gone. */
async function keptOf(lots: readonly Lot[], desk: Desk): Promise<KeptStages> {
  const shared = fingerprintOfRoom(desk);
  const prints = new Map(lots.map(lot => [lot.code, fingerprintOf(lot, shared, desk)]));
  const kept = await keptStages(desk);
  const gone = lots.filter(({code}) => kept[code]?.of !== prints.get(code));
  if (gone.length === 0) return kept;
  const forecastOf = forecaster(desk, gone, {sharesOn: stageDays(desk)});
  const forecasts = await Promise.all(gone.map(async lot => [lot, await forecastOf(lot)] as const));
  return keepStages(desk, new Map(forecasts), prints);
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
