// Water whose air supply has failed.
import type {Alert} from './alert.ts';
import {amissUnits} from './last-answers.ts';
import {tenantsOf} from './lodging.ts';
import type {CareInput} from './task.ts';
import {compareNaturally} from './walking-order.ts';
import {whenWords} from './when-words.ts';

/** One alert for each unit with living animals whose air somebody last found to have failed. */
export function airless({state, civil, now}: CareInput): Alert[] {
  const failed = [...amissUnits('bubbles', state)].sort(([a], [b]) => compareNaturally(a, b));
  return failed.flatMap(([code, since]) => {
    const lots = tenantsOf(code, state).map(lot => lot.code);
    if (lots.length === 0) return [];
    return [
      {
        id: `air:${code}:${civil.dayOf(since)}`,
        what: `the air of ${code} had failed ${whenWords(since, now, civil)}, no bubbles: ${lots.join(', ')}`,
        where: code,
        since,
        mend: 'Give it air within the hour: a spare or a battery pump, cooler and shallower water, fewer animals. Unplug what is on the mains before a hand goes into the water. Then check the air again; bubbles=yes ends this.',
      },
    ];
  });
}
