// The events of a calendar file that we wrote, so that the next one can say what has changed.
import type {Civil, Day} from '../../records/civil.ts';
import {unescaped, unfolded} from './content-line.ts';
import type {DatedEvent} from './event.ts';

/** @returns undefined where the text is no calendar file of ours */
export function readCalendarFile(text: string, civil: Civil): DatedEvent[] | undefined {
  const lines = unfolded(text);
  if (lines[0] !== 'BEGIN:VCALENDAR' || !lines.some(line => line.startsWith('PRODID:-//Teneral//')))
    return undefined;
  const events: DatedEvent[] = [];
  let fields: Map<string, string> | undefined;
  for (const line of lines) {
    if (line === 'BEGIN:VEVENT') fields = new Map();
    else if (line === 'END:VEVENT') {
      const event = fields === undefined ? undefined : eventOf(fields, civil);
      if (event !== undefined) events.push(event);
      fields = undefined;
    } else if (fields !== undefined) {
      const colon = line.indexOf(':');
      fields.set(line.slice(0, colon), line.slice(colon + 1));
    }
  }
  return events;
}

function eventOf(fields: ReadonlyMap<string, string>, civil: Civil): DatedEvent | undefined {
  const text = (name: string) => unescaped(fields.get(name) ?? '');
  const when = whenOf(fields, civil);
  const stamp = instantOf(fields.get('DTSTAMP') ?? '');
  if (when === undefined || Number.isNaN(stamp) || !fields.has('UID')) return undefined;
  return {
    uid: text('UID'),
    summary: text('SUMMARY'),
    description: text('DESCRIPTION'),
    location: fields.has('LOCATION') ? text('LOCATION') : undefined,
    when,
    sequence: Number(fields.get('SEQUENCE') ?? 0),
    stamp,
    cancelled: fields.get('STATUS') === 'CANCELLED',
  };
}

function whenOf(fields: ReadonlyMap<string, string>, civil: Civil): DatedEvent['when'] | undefined {
  const [first, after] = [fields.get('DTSTART;VALUE=DATE'), fields.get('DTEND;VALUE=DATE')].map(dayOf);
  if (first !== undefined && after !== undefined) return {firstDay: first, lastDay: civil.addDays(after, -1)};
  const [from, to] = [fields.get('DTSTART') ?? '', fields.get('DTEND') ?? ''].map(instantOf);
  return Number.isNaN(from) || Number.isNaN(to) ? undefined : {from: from!, to: to!};
}

function dayOf(compact: string | undefined): Day | undefined {
  const [, year, month, day] = /^(\d{4})(\d{2})(\d{2})$/.exec(compact ?? '') ?? [];
  return year === undefined ? undefined : `${year}-${month}-${day}`;
}

function instantOf(compact: string): number {
  return Date.parse(compact.replace(/^(\d{4})(\d{2})(\d{2})T(\d{2})(\d{2})(\d{2})Z$/, '$1-$2-$3T$4:$5:$6Z'));
}
