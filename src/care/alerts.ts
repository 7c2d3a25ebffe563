// What is amiss in the room that is no task.
import type {Alert, RoomFacts} from './alert.ts';
import {disagreements} from './alert-agreement.ts';
import {airless} from './alert-air.ts';
import {foodRunningOut, unsortedSamples} from './alert-arrivals.ts';
import {outOfLimits} from './alert-limits.ts';
import {faultyExtremes, silentLoggers} from './alert-loggers.ts';
import {neverLookedAt} from './alert-lots.ts';
import {nobodyInTime} from './alert-people.ts';
import {returnAlerts} from './alert-returns.ts';
import {visitAlerts} from './alert-visits.ts';
import {badWater} from './alert-water.ts';
import {openTimeOf} from './calendar.ts';
import {jobsOf} from './jobs.ts';
import type {CareInput} from './task.ts';
import {comingsOf} from './visits.ts';

/** Everything amiss now that nobody has acknowledged, the most pressing kind first. */
export function alertsOf(input: CareInput, facts: RoomFacts): Alert[] {
  return amissNow(input, facts).filter(alert => seenTo(alert, input.state) === undefined);
}

/**
 * What was done about an alert; undefined while nobody has seen to it. What was done about an earlier time of the same
 * cause does not count.
 */
export function seenTo({id, since, foreseen = false}: Alert, {acknowledged}: CareInput['state']) {
  const seen = acknowledged.get(id);
  return seen === undefined || (seen.at < since && !foreseen) ? undefined : seen;
}

/** Everything amiss now, acknowledged or not: an alert is there as long as its cause. */
export function amissNow(input: CareInput, facts: RoomFacts): Alert[] {
  const {state, civil} = input;
  const open = openTimeOf(state.calendar, civil);
  const jobs = jobsOf(input, open);
  const {visits, returns} = comingsOf(jobs, open, input);
  return [
    ...airless(input),
    ...outOfLimits(input, facts),
    ...badWater(input),
    ...returnAlerts(returns, open, input),
    ...visitAlerts(visits, open, civil),
    ...nobodyInTime(jobs, open, input),
    ...silentLoggers(input, facts),
    ...foodRunningOut(input),
    ...unsortedSamples(input),
    ...neverLookedAt(input),
    ...faultyExtremes(input),
    ...disagreements(input, facts),
  ];
}
