// Who takes what: the work of a day shared among those who work then.
import type {Weekday} from '../records/civil.ts';
import type {Person} from '../records/state.ts';
import {grouped} from './grouped.ts';
import {compareNaturally, shelfOf} from './walking-order.ts';

interface Place {
  readonly place: string;
  readonly unit: string;
}

interface Work extends Place {
  readonly minutes: number;
}

/** Nobody is down for it; a room that names no people shares nothing out. */
export type Who = string | null;

/**
 * One person for each piece of work, shelf by shelf so that nobody crosses the room for one cage: of those who work on
 * that weekday and may do the place, the one who has least to do so far. Shelves with the fewest to choose from first.
 */
export function whoTakes<Item extends Work>(
  items: readonly Item[],
  weekday: Weekday,
  people: Iterable<Person>,
): ReadonlyMap<Item, Who> {
  const working = [...people].filter(person => worksOn(person, weekday));
  const minutes = new Map(working.map(({name}) => [name, 0]));
  const shares = [...grouped(items, item => `${shelfOf(item.place)}\n${namesFor(item, working).join('\n')}`)]
    .map(([, alike]) => ({alike, able: namesFor(alike[0]!, working)}))
    .sort((a, b) => a.able.length - b.able.length || compareNaturally(a.alike[0]!.place, b.alike[0]!.place));
  const taken = new Map<Item, Who>();
  for (const {alike, able} of shares) {
    const least = able.reduce<string | undefined>(
      (best, name) => (best === undefined || minutes.get(name)! < minutes.get(best)! ? name : best),
      undefined,
    );
    const needed = alike.reduce((sum, item) => sum + item.minutes, 0);
    if (least !== undefined) minutes.set(least, minutes.get(least)! + needed);
    for (const item of alike) taken.set(item, least ?? null);
  }
  return taken;
}

/** Somebody works on that weekday who may do the place. */
export function isManned(where: Place, weekday: Weekday, people: Iterable<Person>): boolean {
  for (const person of people) if (worksOn(person, weekday) && mayDo(person, where)) return true;
  return false;
}

function worksOn({days}: Person, weekday: Weekday): boolean {
  return days === undefined || days.includes(weekday);
}

function namesFor(item: Work, working: readonly Person[]): string[] {
  return working.filter(person => mayDo(person, item)).map(({name}) => name);
}

/** A person may be down for a shelf, one place on it, or one unit; without any, for the whole room. */
function mayDo({places}: Person, {place, unit}: Place): boolean {
  if (places === undefined || places.length === 0) return true;
  return places.some(named => named === unit || named === place || place.startsWith(`${named}/`));
}
