// When the room is open, and when its rounds are walked.
import type {Civil, Day} from '../records/civil.ts';
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import type {Calendar} from '../records/state.ts';

/** A stretch in which the room is open. Its round is walked when it opens. */
export interface Opening {
  readonly from: Instant;
  readonly to: Instant;
}

export interface OpenTime {
  /** The day after, or before. Kept, since it is asked for again and again. */
  neighbour(day: Day, step: 1 | -1): Day;
  isOpen(day: Day): boolean;
  isOpenAt(at: Instant): boolean;
  /** The openings that begin on a day, in order of time. */
  openings(day: Day): readonly Opening[];
  /** Why a day within a closed span is closed, where that was said. */
  closedBecause(day: Day): string | undefined;
  /** Every round from one instant to another, inclusive, in order of time. */
  roundsBetween(from: Instant, to: Instant): Instant[];
  /** The first round at or after an instant; null where none comes within a year. */
  nextRound(at: Instant): Instant | null;
  /** The last round at or before an instant; null where none was within a year. */
  previousRound(at: Instant): Instant | null;
  /** The opening of that round. */
  previousOpening(at: Instant): Opening | null;
  /**
   * The last instant at or before one at which somebody may still begin something: within written opening hours, half
   * an hour before they end. Where no hours are written it is the last round. Null where none was within a year.
   */
  lastMoment(at: Instant): Instant | null;
}

const SEARCH_DAYS = 366;
/** Nothing is begun later than this before the room closes. Common practice, no source. */
const BEFORE_CLOSING_MS = MS_PER_HOUR / 2;

/**
 * The open time of a room. Each stretch of its opening hours is one round, walked when it opens. Without opening
 * hours there is one round a day at 09:00 and the room stays open until midnight; closed spans are closed all day.
 */
export function openTimeOf(calendar: Calendar | undefined, civil: Civil): OpenTime {
  const known = new Map<Day, readonly Opening[]>();
  const neighbours = {1: new Map<Day, Day>(), [-1]: new Map<Day, Day>()};
  const neighbour = (day: Day, step: 1 | -1): Day => {
    let found = neighbours[step].get(day);
    if (found === undefined) {
      found = civil.addDays(day, step);
      neighbours[step].set(day, found);
    }
    return found;
  };
  const closedSpan = (day: Day) => calendar?.closed?.find(({from, to}) => from <= day && day <= to);

  const openings = (day: Day): readonly Opening[] => {
    let found = known.get(day);
    if (found === undefined) {
      found = closedSpan(day) === undefined ? openingsOf(day, calendar?.open, civil) : [];
      known.set(day, found);
    }
    return found;
  };

  const previousOpening = (at: Instant): Opening | null => {
    let day = civil.dayOf(at);
    for (let step = 0; step <= SEARCH_DAYS; step++, day = neighbour(day, -1)) {
      const opening = openings(day).findLast(({from}) => from <= at);
      if (opening !== undefined) return opening;
    }
    return null;
  };

  return {
    openings,
    neighbour,
    previousOpening,
    isOpen: day => openings(day).length > 0,
    isOpenAt(at) {
      const day = civil.dayOf(at);
      const nearby = [...openings(neighbour(day, -1)), ...openings(day)];
      return nearby.some(({from, to}) => from <= at && at < to);
    },
    closedBecause: day => closedSpan(day)?.why,
    roundsBetween(from, to) {
      const rounds: Instant[] = [];
      const last = civil.dayOf(to);
      for (let day = civil.dayOf(from); day <= last; day = neighbour(day, 1))
        for (const {from: round} of openings(day)) if (from <= round && round <= to) rounds.push(round);
      return rounds;
    },
    nextRound(at) {
      let day = civil.dayOf(at);
      for (let step = 0; step <= SEARCH_DAYS; step++, day = neighbour(day, 1)) {
        const round = openings(day).find(({from}) => from >= at);
        if (round !== undefined) return round.from;
      }
      return null;
    },
    previousRound: at => previousOpening(at)?.from ?? null,
    lastMoment(at) {
      const opening = previousOpening(at);
      if (opening === null) return null;
      const {from, to} = opening;
      return calendar?.open === undefined ? from : Math.max(from, Math.min(at, to - BEFORE_CLOSING_MS));
    },
  };
}

function openingsOf(day: Day, hours: Calendar['open'], civil: Civil): readonly Opening[] {
  if (hours === undefined)
    return [{from: civil.at(day, '09:00'), to: civil.at(civil.addDays(day, 1), '00:00')}];
  const written = hours[civil.weekdayOf(day)] ?? [];
  return written.map(stretch => openingOn(day, stretch, civil)).sort((a, b) => a.from - b.from);
}

/** Hours that end before they begin run into the next day. */
function openingOn(day: Day, stretch: string, civil: Civil): Opening {
  const [from = '', to = ''] = stretch.split('-');
  return {from: civil.at(day, from), to: civil.at(to > from ? day : civil.addDays(day, 1), to)};
}
