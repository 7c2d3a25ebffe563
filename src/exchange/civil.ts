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

/** The tasks of a long list share most of their instants. */
const MOST_TEXTS = 1000;

/** Civil time by a zone's clocks. */
export function civilIn(zone: Zone): Civil {
  const names = new Map<number, Day>();
  const nameOf = (days: number): Day => {
    let name = names.get(days);
    if (name === undefined) {
      name = dayNumbered(days);
      names.set(days, name);
    }
    return name;
  };
  const numbers = new Map<Day, number>();
  const numberOf = (day: Day): number => {
    let number = numbers.get(day);
    if (number === undefined) {
      number = numberOfDay(day);
      numbers.set(day, number);
    }
    return number;
  };

  const texts = new Map<Instant, string>();

  return {
    zone: zone.name,
    dayOf: at => nameOf(Math.floor((at + zone.offsetMs(at)) / MS_PER_DAY)),
    at: (day, time) => {
      const wall = numberOf(day) * MS_PER_DAY + minutesOf(time) * 60_000;
      return zone.instantsOf(wall)[0] ?? zone.jumpOver(wall);
    },
    addDays: (day, days) => nameOf(numberOf(day) + days),
    weekdayOf: day => weekdays[((numberOf(day) % 7) + 7) % 7]!,
    offsetMs: zone.offsetMs,
    iso(at) {
      let text = texts.get(at);
      if (text === undefined) {
        if (texts.size >= MOST_TEXTS) texts.clear();
        text = isoAt(Math.round(at), zone.offsetMs(at));
        texts.set(at, text);
      }
      return text;
    },
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
