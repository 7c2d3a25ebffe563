// A visit or a return as commands answer it.
import {minutesOf} from '../care/time-needed.ts';
import type {Visit} from '../care/visits.ts';
import type {Civil} from '../records/civil.ts';

export function comingAnswer({from, to, jobs}: Visit, civil: Civil) {
  return {
    from: civil.iso(from),
    to: civil.iso(to),
    units: [...new Set(jobs.map(({unit}) => unit.code))],
    tasks: [...new Set(jobs.map(({rule}) => rule.task))],
    minutes: jobs.reduce((sum, job) => sum + minutesOf(job), 0),
  };
}
