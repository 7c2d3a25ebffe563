// The days ahead as `teneral ahead` answers them: every instant as ISO text in the room's zone.
import type {FoodAhead} from '../care/food-ahead.ts';
import type {Ahead} from './ahead.ts';
import {comingAnswer} from './coming-answer.ts';
import type {Desk} from './desk.ts';

export function aheadAnswer({days, visits, returns}: Ahead, food: FoodAhead, {civil}: Pick<Desk, 'civil'>) {
  return {
    minutes: days.reduce((sum, day) => sum + day.minutes, 0),
    days: days.map(({items, returns: back, ...day}) => ({
      ...day,
      returns: back.map(({from, to, errands}) => ({from: civil.iso(from), to: civil.iso(to), errands})),
      tasks: items.map(({at, earliest, latest, rationOf: _, ...item}) => ({
        ...item,
        at: civil.iso(at),
        earliest: civil.iso(earliest),
        latest: civil.iso(latest),
      })),
    })),
    visits: visits.map(each => comingAnswer(each, civil)),
    returns: returns.map(each => comingAnswer(each, civil)),
    food,
  };
}
