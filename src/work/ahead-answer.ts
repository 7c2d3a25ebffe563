// The days ahead as `teneral ahead` answers them: every instant as ISO text in the room's zone.
import type {FoodAhead} from '../care/food-ahead.ts';
import type {Ahead} from './ahead.ts';
import type {Desk} from './desk.ts';

export function aheadAnswer({days, visits}: Ahead, food: FoodAhead, {civil}: Pick<Desk, 'civil'>) {
  return {
    minutes: days.reduce((sum, day) => sum + day.minutes, 0),
    days: days.map(({items, ...day}) => ({
      ...day,
      tasks: items.map(({at, earliest, latest, rationOf: _, ...item}) => ({
        ...item,
        at: civil.iso(at),
        earliest: civil.iso(earliest),
        latest: civil.iso(latest),
      })),
    })),
    visits: visits.map(({from, to, jobs}) => ({
      from: civil.iso(from),
      to: civil.iso(to),
      units: [...new Set(jobs.map(({unit}) => unit.code))],
      tasks: [...new Set(jobs.map(({rule}) => rule.task))],
    })),
    food,
  };
}
