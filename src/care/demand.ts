// What closed days make pressing.
import type {Instant} from '../records/entry.ts';
import type {Job} from './job.ts';

/** Something that has to be done in closed time. */
export interface Demand {
  readonly from: Instant;
  readonly to: Instant;
  readonly job: Job;
}
