// A forecast in words: days near now by weekday, windows, status.
import type {Window} from '../development/answer.ts';
import {dayMonth, weekdayDay} from '../exchange/pictures/day-words.ts';
import type {Civil, Day} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {materialInWords} from '../records/plain-words.ts';
import type {Outlook} from '../work/outlook.ts';

/** "today", "tomorrow", "Tue", "1 Jul" */
export function shortDay(atDays: number | null, civil: Civil, now: Instant): string {
  if (atDays === null) return 'not known';
  const day = civil.dayOf(atDays * MS_PER_DAY);
  const today = civil.dayOf(now);
  if (day === today) return 'today';
  if (day === civil.addDays(today, 1)) return 'tomorrow';
  const inAWeek = today < day && day < civil.addDays(today, 7);
  return inAWeek ? weekdayDay(day, civil).slice(0, 3) : withYear(day, today);
}

/** "1 Jul (28 Jun to 4 Jul)"; a window within one day by its hours, "tomorrow (00:40 to 16:02)". */
export function windowWords(window: Window | null, civil: Civil, now: Instant): string {
  if (window === null || window.p50 === null) return 'not known';
  const {p10, p50, p90} = window;
  const day = shortDay(p50, civil, now);
  const from = shortDay(p10, civil, now);
  const to = p90 === null ? 'beyond a year' : shortDay(p90, civil, now);
  const isOneDay = p10 !== null && p90 !== null && from === to;
  return isOneDay ? `${day} (${clock(p10, civil)} to ${clock(p90, civil)})` : `${day} (${from} to ${to})`;
}

/** What stands at the end of a thread: when the first adult comes, or how the lot stands. */
export function endWords({lot, forecast}: Outlook, civil: Civil, now: Instant): string {
  switch (forecast.status) {
    case 'finished':
      return `${lot.tally.emerged} out`;
    case 'unknown':
      return 'not known';
    case 'late':
      return 'late';
    case 'due':
      return 'look now';
    default:
      return lot.tally.emerged > 0
        ? `${lot.tally.emerged} out`
        : shortDay((forecast.first ?? forecast.animal).p50, civil, now);
  }
}

export function statusWords({lot, forecast}: Outlook): string {
  switch (forecast.status) {
    case 'finished':
      return 'finished';
    case 'unknown':
      return 'no candidate with a profile, so no forecast; counted moults only';
    case 'late':
      return 'late: in diapause, or dead, or missed';
    case 'due':
      return 'adults are probably out already, unseen';
    case 'emerging':
      return `${lot.tally.emerged} adults came out`;
    case 'developing':
      return lot.tally.emerged > 0 ? `${lot.tally.emerged} adults came out` : 'developing';
  }
}

/** "18 alive of 24", "40 galls, animals hidden" */
export function aliveWords({lot, forecast}: Outlook): string {
  const {material, tally} = lot;
  if (material !== undefined) return `${materialInWords(material)}, animals hidden`;
  if (forecast.alive === null) return 'number alive not known';
  const came = tally.started + tally.hatched + tally.mergedIn + tally.found;
  return `${forecast.alive} alive of ${came}${lot.counted === 'estimated' ? ', estimated' : ''}`;
}

/** "pieris-rapae 0.86, lepidoptera 0.14" */
export function candidateWords({forecast}: Outlook): string {
  return forecast.candidates.map(({profile, weight}) => `${profile} ${weight.toFixed(2)}`).join(', ');
}

function withYear(day: Day, today: Day): string {
  return day.slice(0, 4) === today.slice(0, 4) ? dayMonth(day) : `${dayMonth(day)} ${day.slice(0, 4)}`;
}

function clock(atDays: number, civil: Civil): string {
  return civil.iso(atDays * MS_PER_DAY).slice(11, 16);
}
