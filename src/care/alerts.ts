// What is amiss in the room that is no task.
import type {Alert, RoomFacts} from './alert.ts';
import {outOfLimits} from './alert-limits.ts';
import {notReset, silentLoggers} from './alert-loggers.ts';
import {neverLookedAt} from './alert-lots.ts';
import {visitAlerts} from './alert-visits.ts';
import {openTimeOf} from './calendar.ts';
import {jobsOf} from './jobs.ts';
import type {CareInput} from './task.ts';
import {visitsOf} from './visits.ts';

/** Everything amiss now that nobody has acknowledged, the most pressing kind first. */
export function alertsOf(input: CareInput, facts: RoomFacts): Alert[] {
  const {state, civil} = input;
  const open = openTimeOf(state.calendar, civil);
  const alerts = [
    ...outOfLimits(input, facts),
    ...visitAlerts(visitsOf(jobsOf(input, open), open, input), open, civil),
    ...silentLoggers(input, facts),
    ...neverLookedAt(input),
    ...notReset(input),
  ];
  return alerts.filter(({id}) => !state.acknowledged.has(id));
}
