// A time zone's clock: what it shows at an instant, and which instants it means.
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
const LONG_SPAN_MS = 8 * MS_PER_DAY;
const zones = new Map<string, Zone>();

const FIXED = /^(?:UTC|GMT)?([+-])(\d{1,2})(?::?([0-5]\d))?$/i;

/** A zone by its IANA name, or by a fixed offset such as +01:00 or UTC-5. @throws Refusal where there is none such */
export function zoneNamed(name: string, where = ''): Zone {
  const known = zones.get(name);
  if (known !== undefined) return known;
  const [, sign, hours, minutes = '0'] = FIXED.exec(name) ?? [];
  if (hours !== undefined && Number(hours) <= 14)
    return fixedZone((sign === '-' ? -1 : 1) * (Number(hours) * 60 + Number(minutes)) * MS_PER_MINUTE);
  const zone = name === 'UTC' ? zoneWith(name, () => 0) : zoneWith(name, ianaClock(name, where));
  zones.set(name, zone);
  return zone;
}

/** What a zone's clocks do from one instant to another. */
export interface ClockChanges {
  readonly zone: string;
  readonly from: Instant;
  readonly to: Instant;
  /** The offset at the beginning, then each that the clocks change to; each holds until the next. */
  readonly offsets: readonly {readonly at: Instant; readonly offsetMs: number}[];
}

/** Found by halving from eight days to eight days; a zone that changes its clocks and back within those is not known. */
export function clockChanges({name, offsetMs}: Zone, from: Instant, to: Instant): ClockChanges {
  const offsets = [{at: from, offsetMs: offsetMs(from)}];
  for (let start = from; start < to; start += LONG_SPAN_MS) {
    const end = Math.min(start + LONG_SPAN_MS, to);
    const before = offsets.at(-1)!.offsetMs;
    const after = offsetMs(end);
    if (after !== before)
      offsets.push({at: changeBetween(start, end, at => offsetMs(at) === before), offsetMs: after});
  }
  return {zone: name, from, to, offsets};
}

/**
 * Take over what a zone's clocks do, found earlier: asking the system for a zone takes longer than all else that a
 * short question costs. Beyond what is known the system is asked.
 */
export function rememberClock({zone: name, from, to, offsets}: ClockChanges): void {
  if (zones.has(name)) return;
  let ask: ((at: Instant) => number) | undefined;
  const beyond = (at: Instant) => {
    ask ??= ianaClock(name, '');
    return ask(at);
  };
  const known = (at: Instant) => offsets.findLast(each => each.at <= at)!.offsetMs;
  zones.set(
    name,
    zoneWith(name, at => (from <= at && at < to ? known(at) : beyond(at))),
  );
}

/** Offsets of a zone of the IANA list as this system has it. @throws Refusal where there is none of this name */
function ianaClock(name: string, where: string): (at: Instant) => number {
  const parts = partsOf(name, where);
  return at => {
    const shown = new Map(parts.formatToParts(at).map(({type, value}) => [type, Number(value)]));
    const part = (type: Intl.DateTimeFormatPartTypes) => shown.get(type) ?? 0;
    const wall = Date.UTC(
      part('year'),
      part('month') - 1,
      part('day'),
      part('hour'),
      part('minute'),
      part('second'),
    );
    return Math.round((wall - Math.floor(at / 1000) * 1000) / MS_PER_MINUTE) * MS_PER_MINUTE;
  };
}

function partsOf(timeZone: string, where: string): Intl.DateTimeFormat {
  try {
    return new Intl.DateTimeFormat('en-US', {
      timeZone,
      calendar: 'iso8601',
      hourCycle: 'h23',
      year: 'numeric',
      month: 'numeric',
      day: 'numeric',
      hour: 'numeric',
      minute: 'numeric',
      second: 'numeric',
    });
  } catch {
    throw new Refusal(
      `there is no time zone "${timeZone}"`,
      where,
      'Name it as the IANA list does, such as Europe/Amsterdam, America/New_York, Asia/Tokyo or UTC; a clock that never changes as +01:00.',
    );
  }
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
  const offsetMs = steadyOver(LONG_SPAN_MS, steadyOver(MS_PER_DAY, ask));
  const before = (wall: WallMs) => offsetMs(wall - MS_PER_DAY);
  const after = (wall: WallMs) => offsetMs(wall + MS_PER_DAY);

  return {
    name,
    offsetMs,
    instantsOf(wall) {
      const offset = before(wall);
      const candidates = offset === after(wall) ? [wall - offset] : [wall - offset, wall - after(wall)];
      return candidates.filter(at => at + offsetMs(at) === wall).sort((a, b) => a - b);
    },
    jumpOver: wall =>
      changeBetween(wall - after(wall), wall - before(wall), at => offsetMs(at) === before(wall)),
    steadyOffsetMs(day) {
      const offset = offsetMs((day - 1) * MS_PER_DAY);
      return offset === offsetMs((day + 2) * MS_PER_DAY) ? offset : undefined;
    },
  };
}

/** The first instant at which something no longer holds that holds at the beginning and not at the end. */
function changeBetween(from: Instant, to: Instant, holds: (at: Instant) => boolean): Instant {
  let [low, high] = [from, to];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle;
  }
  return high;
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
