// Civil time in a zone, as the pure folders see it.
import type {Civil, Day, Weekday} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {offsetText, type Zone, zoneNamed} from './zone.ts';

const weekdays: readonly Weekday[] = ['thu', 'fri', 'sat', 'sun', 'mon', 'tue', 'wed'];
const made = new Map<string, Civil>();

/**
 * Civil time in a zone of the IANA list. A time of day that the clocks show twice is its first.
 * @param where how to name to a person where the zone was given
 * @throws Refusal where no zone has this name
 */
export function civil(zone: string, where = ''): Civil {
  const known = made.get(zone);
  if (known !== undefined) return known;
  const fresh = civilIn(zoneNamed(zone, where));
  made.set(zone, fresh);
  return fresh;
}

/** The civil day of a count of days since 1970. */
export function dayNumbered(days: number): Day {
  return new Date(days * MS_PER_DAY).toISOString().slice(0, 10);
}

/** Days since 1970 of a civil day. */
export function numberOfDay(day: Day): number {
  return Date.parse(`${day}T00:00Z`) / MS_PER_DAY;
}

/** Civil time by a zone's clocks. */
export function civilIn(zone: Zone): Civil {
  const nameOf = kept(dayNumbered);
  const numberOf = kept(numberOfDay);
  const instantOf = kept((wall: number) => zone.instantsOf(wall)[0] ?? zone.jumpOver(wall));

  return {
    zone: zone.name,
    dayOf: at => nameOf(Math.floor((at + zone.offsetMs(at)) / MS_PER_DAY)),
    at: (day, time) => instantOf(numberOf(day) * MS_PER_DAY + minutesOf(time) * 60_000),
    addDays: (day, days) => nameOf(numberOf(day) + days),
    weekdayOf: day => weekdays[((numberOf(day) % 7) + 7) % 7]!,
    offsetMs: zone.offsetMs,
    iso: kept((at: Instant) => isoAt(Math.round(at), zone.offsetMs(at))),
  };
}

/** The tasks of a long list share most of their days and instants; the rows of a long file share none. */
const MOST_KEPT = 1000;

function kept<Key, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, Value>();
  return key => {
    let value = known.get(key);
    if (value === undefined) {
      if (known.size >= MOST_KEPT) known.clear();
      value = make(key);
      known.set(key, value);
    }
    return value;
  };
}

function minutesOf(time: string): number {
  const colon = time.indexOf(':');
  return Number(time.slice(0, colon)) * 60 + Number(time.slice(colon + 1));
}

function isoAt(at: Instant, offsetMs: number): string {
  const wall = new Date(at + offsetMs).toISOString();
  return `${wall.endsWith('.000Z') ? wall.slice(0, -5) : wall.slice(0, -1)}${offsetText(offsetMs)}`;
}
