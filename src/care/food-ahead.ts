// How much food the days ahead take: of each food and day, and what has to be there before closed days.
import type {Day} from '../records/civil.ts';
import {type Ration, rounded} from './amounts.ts';
import {grouped} from './grouped.ts';
import {compareNaturally} from './walking-order.ts';

/** One feeding to come. */
export interface Feeding {
  readonly unit: string;
  readonly lot: string | null;
  /** Null where nobody counted, or where no amount is known for these animals. */
  readonly food: Ration | null;
  /** The same for the stages that the animals are to be in by then; null where there is no forecast of them. */
  readonly grown: number | null;
  /** The plant that the animals were found on, where leaves are fed. */
  readonly plant: string | null;
}

export interface FeedingDay {
  readonly day: Day;
  readonly open: boolean;
  readonly feedings: readonly Feeding[];
}

/** So much of one food, as last counted. */
export interface FoodSum extends Ration {
  /** As the animals are to have grown by then; null where no forecast has them otherwise than counted. */
  readonly grown: number | null;
  readonly plant: string | null;
  /** In which units, in their order. */
  readonly units: readonly string[];
}

export interface FoodOnDays extends FoodSum {
  /** By day, those without any left out; none where the amount is for all the time that the animals feed. */
  readonly perDay: Readonly<Record<Day, number>>;
  readonly grownPerDay: Readonly<Record<Day, number>> | null;
}

export interface FoodAhead {
  readonly foods: readonly FoodOnDays[];
  /** What is fed by eye: nobody counted them, or no amount is known for them. */
  readonly byEye: readonly {readonly unit: string; readonly lot: string | null}[];
  /** What visits on closed days take, to be got on the last open day before. */
  readonly beforeClosed: readonly BeforeClosed[];
}

export interface BeforeClosed {
  /** The last open day; the first day asked about where none is open before. */
  readonly by: Day;
  readonly from: Day;
  readonly to: Day;
  readonly foods: readonly FoodSum[];
}

/** @param days in order, without gaps */
export function foodAhead(days: readonly FeedingDay[]): FoodAhead {
  const all = days.flatMap(({feedings}) => feedings);
  return {
    foods: [...grouped(all.filter(isKnown), foodKey)].map(([key, alike]) => {
      const sum = sumOf(alike);
      return {
        ...sum,
        perDay: sum.inAll ? {} : perDay(key, days, countedAmount),
        grownPerDay: sum.grown === null ? null : perDay(key, days, grownAmount),
      };
    }),
    byEye: [
      ...new Map(
        all
          .filter(feeding => !isKnown(feeding))
          .map(({unit, lot}) => [`${unit} ${lot}`, {unit, lot}] as const),
      ).values(),
    ].sort((a, b) => compareNaturally(a.unit, b.unit)),
    beforeClosed: closedSpells(days).flatMap(({by, closed}) => {
      const foods = [...grouped(feedingsOf(closed).filter(isEachTime), foodKey).values()].map(sumOf);
      return foods.length === 0 ? [] : [{by, from: closed[0]!.day, to: closed.at(-1)!.day, foods}];
    }),
  };
}

type Known = Feeding & {readonly food: Ration};

function isKnown(feeding: Feeding): feeding is Known {
  return feeding.food !== null;
}

function isEachTime(feeding: Feeding): feeding is Known {
  return isKnown(feeding) && !feeding.food.inAll;
}

function foodKey({food, plant}: Known): string {
  return `${food.inAll ? 'in all ' : ''}${food.of} ${plant ?? ''}`;
}

function sumOf(alike: readonly Known[]): FoodSum {
  const [{food, plant}] = alike as [Known];
  // What is for all the time they feed is wanted once, however often they are looked after.
  const counted = food.inAll
    ? [...new Map(alike.map(each => [each.lot ?? each.unit, each])).values()]
    : alike;
  const grows = !food.inAll && alike.some(({grown}) => grown !== null);
  return {
    grown: grows ? rounded(alike.reduce((sum, each) => sum + grownAmount(each), 0)) : null,
    amount: rounded(counted.reduce((sum, each) => sum + countedAmount(each), 0)),
    of: food.of,
    estimated: alike.some(each => each.food.estimated),
    atLeast: alike.some(each => each.food.atLeast),
    inAll: food.inAll,
    plant,
    units: [...new Set(alike.map(({unit}) => unit))].sort(compareNaturally),
  };
}

function countedAmount({food}: Known): number {
  return food.amount;
}

function grownAmount({food, grown}: Known): number {
  return grown ?? food.amount;
}

function perDay(
  key: string,
  days: readonly FeedingDay[],
  amountOf: (feeding: Known) => number,
): Record<Day, number> {
  const amounts = days.map(({day, feedings}) => {
    const alike = feedings.filter(isKnown).filter(feeding => foodKey(feeding) === key);
    return [day, rounded(alike.reduce((sum, feeding) => sum + amountOf(feeding), 0))] as const;
  });
  return Object.fromEntries(amounts.filter(([, amount]) => amount > 0));
}

function feedingsOf(days: readonly FeedingDay[]): Feeding[] {
  return days.flatMap(({feedings}) => feedings);
}

/** Closed days that follow one another, each spell with the open day before it. */
function closedSpells(days: readonly FeedingDay[]): {by: Day; closed: FeedingDay[]}[] {
  const spells: {by: Day; closed: FeedingDay[]}[] = [];
  days.forEach((each, i) => {
    if (each.open) return;
    const before = days[i - 1];
    if (before === undefined || before.open) spells.push({by: (before ?? each).day, closed: [each]});
    else spells.at(-1)!.closed.push(each);
  });
  return spells;
}
