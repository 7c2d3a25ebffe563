// A time zone's clock: what it shows at an instant, and which instants it means. Offsets come from luxon.
import {IANAZone} from 'luxon';
import type {Instant} from '../records/entry.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';

/** What a clock on the wall shows, as the milliseconds UTC would show the same at. */
export type WallMs = number;

export interface Zone {
  readonly name: string;
  /** How far the zone's clocks are ahead of UTC, in whole minutes. */
  offsetMs(at: Instant): number;
  /** The instants at which the clocks show this: none where they skip it, two, in order, where they show it twice. */
  instantsOf(wall: WallMs): readonly Instant[];
  /** The instant at which the clocks jump over a time that they skip. */
  jumpOver(wall: WallMs): Instant;
  /** The one offset of a civil day, counted in days since 1970; undefined where the clocks change near it. */
  steadyOffsetMs(day: number): number | undefined;
}

const MS_PER_MINUTE = 60_000;
const zones = new Map<string, Zone>();

/** @throws Refusal where no zone has this name */
export function zoneNamed(name: string, where = ''): Zone {
  const known = zones.get(name);
  if (known !== undefined) return known;
  if (!IANAZone.isValidZone(name))
    throw new Refusal(
      `there is no time zone "${name}"`,
      where,
      'Name it as the IANA list does, such as Europe/Amsterdam, America/New_York, Asia/Tokyo or UTC.',
    );
  const zone = clockOf(name, IANAZone.create(name));
  zones.set(name, zone);
  return zone;
}

/** Asking for an offset is slow, so each UTC day is asked for once; days on which it changes are asked every time. */
function clockOf(name: string, zone: IANAZone): Zone {
  const ask = (at: Instant) => Math.round(zone.offset(at)) * MS_PER_MINUTE;
  const offsetOfDay = new Map<number, number>();

  function offsetMs(at: Instant): number {
    const day = Math.floor(at / MS_PER_DAY);
    let offset = offsetOfDay.get(day);
    if (offset === undefined) {
      const atStart = ask(day * MS_PER_DAY);
      offset = atStart === ask((day + 1) * MS_PER_DAY) ? atStart : Number.NaN;
      offsetOfDay.set(day, offset);
    }
    return Number.isNaN(offset) ? ask(at) : offset;
  }

  const before = (wall: WallMs) => offsetMs(wall - MS_PER_DAY);
  const after = (wall: WallMs) => offsetMs(wall + MS_PER_DAY);

  return {
    name,
    offsetMs,
    instantsOf(wall) {
      const candidates = [...new Set([before(wall), after(wall)])].map(offset => wall - offset);
      return candidates.filter(at => at + offsetMs(at) === wall).sort((a, b) => a - b);
    },
    jumpOver(wall) {
      let low = wall - after(wall);
      let high = wall - before(wall);
      while (high - low > 1) {
        const middle = Math.floor((low + high) / 2);
        if (offsetMs(middle) === before(wall)) low = middle;
        else high = middle;
      }
      return high;
    },
    steadyOffsetMs(day) {
      const offset = offsetMs((day - 1) * MS_PER_DAY);
      return offset === offsetMs((day + 2) * MS_PER_DAY) ? offset : undefined;
    },
  };
}
