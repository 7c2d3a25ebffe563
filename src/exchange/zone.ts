// A time zone's clock: what it shows at an instant, and which instants it means. Offsets come from luxon.
import {IANAZone} from 'luxon';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
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

const FIXED = /^(?:UTC|GMT)?([+-])(\d{1,2})(?::?([0-5]\d))?$/i;

/** A zone by its IANA name, or by a fixed offset such as +01:00 or UTC-5. @throws Refusal where there is none such */
export function zoneNamed(name: string, where = ''): Zone {
  const known = zones.get(name);
  if (known !== undefined) return known;
  const [, sign, hours, minutes = '0'] = FIXED.exec(name) ?? [];
  if (hours !== undefined && Number(hours) <= 14)
    return fixedZone((sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * MS_PER_MINUTE);
  if (!IANAZone.isValidZone(name))
    throw new Refusal(
      `there is no time zone "${name}"`,
      where,
      'Name it as the IANA list does, such as Europe/Amsterdam, America/New_York, Asia/Tokyo or UTC; a clock that never changes as +01:00.',
    );
  const iana = IANAZone.create(name);
  const zone = zoneWith(name, at => Math.round(iana.offset(at)) * MS_PER_MINUTE);
  zones.set(name, zone);
  return zone;
}

/** The zone whose clocks are always this far ahead of UTC. */
export function fixedZone(offsetMs: number): Zone {
  return zoneWith(`UTC${offsetText(offsetMs)}`, () => offsetMs);
}

/** An offset as ISO 8601 writes it, ±hh:mm. */
export function offsetText(offsetMs: number): string {
  const minutes = Math.abs(offsetMs) / MS_PER_MINUTE;
  const digits = [Math.floor(minutes / 60), minutes % 60].map(part => String(part).padStart(2, '0'));
  return `${offsetMs < 0 ? '-' : '+'}${digits.join(':')}`;
}

/** A zone from the offsets at its instants. Asking for one may be slow; it is seldom asked. */
export function zoneWith(name: string, ask: (at: Instant) => number): Zone {
  const offsetMs = steadyOver(8 * MS_PER_DAY, steadyOver(MS_PER_DAY, ask));
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

/** Asks at the ends of spans only; inside one the offset is theirs where both agree, else it is asked every time. */
function steadyOver(spanMs: number, ask: (at: Instant) => number): (at: Instant) => number {
  const offsetOfSpan = new Map<number, number | undefined>();
  return at => {
    const span = Math.floor(at / spanMs);
    let offset = offsetOfSpan.get(span);
    if (offset === undefined && !offsetOfSpan.has(span)) {
      const atStart = ask(span * spanMs);
      offset = atStart === ask((span + 1) * spanMs) ? atStart : undefined;
      offsetOfSpan.set(span, offset);
    }
    return offset ?? ask(at);
  };
}
