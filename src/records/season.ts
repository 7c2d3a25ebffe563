// The season that animals come from. Profiles tell the months of the north.
import {type Instant, MS_PER_DAY} from './entry.ts';
import type {RoomState} from './state.ts';

const YEAR_DAYS = 365.25;
const NORTHERN_MIDSUMMER = '06-21';

/**
 * Days by which the year of a sample's place lies behind the northern one: half a year south of the equator, else what
 * the room says of its midsummer.
 */
export function seasonLagDays(
  {settings, samples}: Pick<RoomState, 'settings' | 'samples'>,
  sample: string,
): number {
  const {midsummer} = settings;
  if (midsummer !== undefined) return daysAfter(NORTHERN_MIDSUMMER, midsummer);
  return (samples.get(sample)?.place?.latitude ?? 0) < 0 ? YEAR_DAYS / 2 : 0;
}

/** The month of the northern year, 1 to 12, that an instant falls in. */
export function monthOfSeason(at: Instant, lagDays: number): number {
  return new Date(at - lagDays * MS_PER_DAY).getUTCMonth() + 1;
}

/** From one day of the year to another, the shorter way; both mm-dd. */
function daysAfter(one: string, other: string): number {
  const [from, to] = [one, other].map(day => Date.parse(`2000-${day}`) / MS_PER_DAY);
  const days = to! - from!;
  return days - YEAR_DAYS * Math.round(days / YEAR_DAYS);
}
