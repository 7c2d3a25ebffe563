// The temperature course that a lot's animals lived through and will live through: no gaps left unsaid.

/** Where a stretch of a course comes from. */
export type CourseBasis =
  | 'logger'
  | 'extremes'
  | 'hand'
  | 'other-logger'
  | 'mean-day'
  | 'set-points'
  | 'expected'
  | 'held'
  | 'unknown';

/**
 * A course without gaps: straight lines between nodes, equal instants making a step. Where nothing is known
 * (`unknown`) the nodes carry NaN.
 */
export interface Course {
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  /** In order of time, touching, from the first node to the last. */
  readonly stretches: readonly {
    readonly fromDays: number;
    readonly toDays: number;
    readonly basis: CourseBasis;
    readonly of?: string;
  }[];
  /** Days where what is known ends and what is expected begins: now, or where readings end, whichever is later. */
  readonly expectedFromDays: number;
}
