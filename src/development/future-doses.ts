// The dose of one rate model through every future of a unit: each day that may come is reckoned once.
import type {Futures} from '../climate/futures.ts';
import {doseCourse} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';

const HOURS = 24;
const NODES = HOURS + 1;

/** Doses since the futures began. */
export interface FutureDoses {
  readonly fromDays: number;
  readonly size: number;
  /** Whole days that the futures last. */
  readonly length: number;
  /** By day of the library, the dose since its beginning at each hour. */
  readonly within: readonly Float64Array[];
  readonly orders: Futures['orders'];
  /** By future, the dose at the beginning of each of its days and at its end. */
  readonly starts: readonly Float64Array[];
}

export function futureDosesOf({fromDays, days, orders}: Futures, model: RateModel): FutureDoses {
  const hours = Float64Array.from({length: NODES}, (_, hour) => hour / HOURS);
  const within = days.map(day => doseCourse(day, model, hours));
  const whole = Float64Array.from(within, nodes => nodes[HOURS]!);
  const starts = orders.map(order => {
    const doses = new Float64Array(order.length + 1);
    let dose = 0;
    for (let day = 0; day < order.length; day++) {
      dose += whole[order[day]!]!;
      doses[day + 1] = dose;
    }
    return doses;
  });
  return {fromDays, size: orders.length, length: orders[0]?.length ?? 0, within, orders, starts};
}

/** The dose that a future gives from its beginning to an instant. */
export function doseAhead(
  {fromDays, length, within, orders, starts}: FutureDoses,
  future: number,
  atDays: number,
): number {
  const position = atDays - fromDays;
  if (position <= 0) return 0;
  const day = Math.floor(position);
  if (day >= length) return starts[future]![length]!;
  return starts[future]![day]! + doseWithin(within[orders[future]![day]!]!, position - day);
}

/** The instant at which a future has given a dose; Infinity where it never does. */
export function instantAhead(
  {fromDays, length, within, orders, starts}: FutureDoses,
  future: number,
  dose: number,
): number {
  if (dose <= 0) return fromDays;
  const own = starts[future]!;
  if (!(own[length]! >= dose)) return Number.POSITIVE_INFINITY;
  // Warmth comes about evenly: walk from the day, then the hour, at which it would bring the dose.
  let day = Math.min(length - 1, Math.floor((length * dose) / own[length]!));
  while (own[day]! >= dose) day--;
  while (own[day + 1]! < dose) day++;
  const nodes = within[orders[future]![day]!]!;
  const wanted = dose - own[day]!;
  let hour = Math.min(HOURS - 1, Math.floor((HOURS * wanted) / nodes[HOURS]!));
  while (hour > 0 && nodes[hour]! >= wanted) hour--;
  while (hour < HOURS - 1 && nodes[hour + 1]! < wanted) hour++;
  const rise = nodes[hour + 1]! - nodes[hour]!;
  const along = rise > 0 ? Math.min(1, (wanted - nodes[hour]!) / rise) : 1;
  return fromDays + day + (hour + along) / HOURS;
}

/** The mean over all futures, at every hour from their beginning to their end. */
export function meanDoseAhead({size, length, within, orders}: FutureDoses): Float64Array {
  const mean = new Float64Array(length * HOURS + 1);
  const times = new Float64Array(within.length);
  for (let day = 0; day < length; day++) {
    times.fill(0);
    for (const order of orders) times[order[day]!] = times[order[day]!]! + 1 / size;
    const from = day * HOURS;
    for (let hour = 1; hour <= HOURS; hour++) mean[from + hour] = mean[from]!;
    for (let which = 0; which < times.length; which++) {
      const share = times[which]!;
      if (share === 0) continue;
      const nodes = within[which]!;
      for (let hour = 1; hour <= HOURS; hour++) mean[from + hour] = mean[from + hour]! + share * nodes[hour]!;
    }
  }
  return mean;
}

function doseWithin(nodes: Float64Array, partOfDay: number): number {
  const position = partOfDay * HOURS;
  const hour = Math.floor(position);
  return nodes[hour]! + (position - hour) * (nodes[hour + 1]! - nodes[hour]!);
}
