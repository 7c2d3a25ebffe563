// What has changed since the file before: events that are new, moved, or gone.
import type {Civil} from '../../records/civil.ts';
import type {Instant} from '../../records/entry.ts';
import type {CalendarEvent, DatedEvent} from './event.ts';

export interface Succession {
  /** In order of time. */
  readonly events: readonly DatedEvent[];
  readonly added: number;
  readonly changed: number;
  readonly cancelled: number;
}

/**
 * The events as they follow the file before. One that is as it was keeps its number and stamp; one that changed has
 * the next number; one that is no longer planned and still to come is written once more as cancelled, so that a
 * calendar takes it out. What is past is left out: the daybook knows it.
 */
export function succeeding(
  before: readonly DatedEvent[],
  planned: readonly CalendarEvent[],
  now: Instant,
  civil: Civil,
): Succession {
  const known = new Map(before.map(event => [event.uid, event]));
  const wanted = new Set(planned.map(({uid}) => uid));
  let [added, changed] = [0, 0];
  const stamp = Math.floor(now / 1000) * 1000;
  const current = planned.map((event): DatedEvent => {
    const old = known.get(event.uid);
    if (old === undefined) {
      added++;
      return {...event, sequence: 0, stamp, cancelled: false};
    }
    if (!old.cancelled && isSame(old, event)) return old;
    changed++;
    return {...event, sequence: old.sequence + 1, stamp, cancelled: false};
  });
  const gone = before
    .filter(event => !wanted.has(event.uid) && endOf(event, civil) > now)
    .map(event =>
      event.cancelled ? event : {...event, sequence: event.sequence + 1, stamp, cancelled: true},
    );
  return {
    events: [...current, ...gone].sort(
      (a, b) => startOf(a, civil) - startOf(b, civil) || (a.uid < b.uid ? -1 : 1),
    ),
    added,
    changed,
    cancelled: gone.filter(event => event.stamp === stamp).length,
  };
}

/** To the second, as it is written. */
function isSame(a: CalendarEvent, b: CalendarEvent): boolean {
  return (
    a.summary === b.summary &&
    a.description === b.description &&
    a.location === b.location &&
    whenText(a) === whenText(b)
  );
}

function whenText({when}: CalendarEvent): string {
  if ('firstDay' in when) return `${when.firstDay} ${when.lastDay}`;
  return `${Math.floor(when.from / 1000)} ${Math.floor(when.to / 1000)}`;
}

function startOf({when}: CalendarEvent, civil: Civil): Instant {
  return 'from' in when ? when.from : civil.at(when.firstDay, '00:00');
}

function endOf({when}: CalendarEvent, civil: Civil): Instant {
  return 'to' in when ? when.to : civil.at(civil.addDays(when.lastDay, 1), '00:00');
}
