// A calendar file: RFC 5545. Instants are written in UTC, so that no reader needs the rules of our time zone.
import type {Civil} from '../../records/civil.ts';
import type {Instant} from '../../records/entry.ts';
import {contentLines, escaped} from './content-line.ts';
import type {DatedEvent} from './event.ts';

export function calendarFile(name: string, events: readonly DatedEvent[], civil: Civil): string {
  return contentLines([
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Teneral//rearing room//EN',
    'CALSCALE:GREGORIAN',
    'METHOD:PUBLISH',
    // RFC 7986, section 5.1; readers that do not know it pass it over.
    `NAME:${escaped(name)}`,
    ...events.flatMap(event => eventLines(event, civil)),
    'END:VCALENDAR',
  ]);
}

function eventLines(event: DatedEvent, civil: Civil): string[] {
  const {uid, stamp, sequence, summary, description, location, cancelled} = event;
  return [
    'BEGIN:VEVENT',
    `UID:${escaped(uid)}`,
    `DTSTAMP:${utc(stamp)}`,
    `SEQUENCE:${sequence}`,
    ...whenLines(event, civil),
    `SUMMARY:${escaped(summary)}`,
    ...(description === '' ? [] : [`DESCRIPTION:${escaped(description)}`]),
    ...(location === undefined ? [] : [`LOCATION:${escaped(location)}`]),
    `STATUS:${cancelled ? 'CANCELLED' : 'CONFIRMED'}`,
    'END:VEVENT',
  ];
}

/** The end of whole days is the day after the last: RFC 5545, 3.6.1. Whole days take nobody's time. */
function whenLines({when}: DatedEvent, civil: Civil): string[] {
  if ('from' in when) return [`DTSTART:${utc(when.from)}`, `DTEND:${utc(when.to)}`];
  const compact = (day: string) => day.replaceAll('-', '');
  return [
    `DTSTART;VALUE=DATE:${compact(when.firstDay)}`,
    `DTEND;VALUE=DATE:${compact(civil.addDays(when.lastDay, 1))}`,
    'TRANSP:TRANSPARENT',
  ];
}

/** To the second. */
export function utc(at: Instant): string {
  return `${new Date(at).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}Z`;
}
