// The temperature course that a lot's animals lived through and will live through: no gaps left unsaid.
import type {Futures} from './futures.ts';
import type {WaterOffset} from './water-offset.ts';

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

export interface Stretch {
  readonly fromDays: number;
  readonly toDays: number;
  readonly basis: CourseBasis;
  /** The logger that was read; of what is expected, what it rests on. */
  readonly of?: string;
  /** Of another logger: by how much its readings were moved, °C. */
  readonly movedC?: number;
  /** Of an estimate: the standard deviation of what it was learned from, °C. */
  readonly sdC?: number;
}

/**
 * A course without gaps: straight lines between nodes, equal instants making a step. Where nothing is known
 * (`unknown`) the nodes carry NaN. It is a temperature trace in which no pause is too long.
 */
export interface Course {
  readonly atDays: Float64Array;
  readonly temperatureC: Float64Array;
  /** In order of time, touching, from the first node to the last. */
  readonly stretches: readonly Stretch[];
  /** Days where what is known ends and what is expected begins: now, or where readings end, whichever is later. */
  readonly expectedFromDays: number;
  /** What measurements of the water taught of the unit that the lot is in now; absent where it has an offset of its own. */
  readonly water?: WaterOffset;
  /** What may come instead of the one course expected; absent where none were asked for, or too little was read. */
  readonly futures?: Futures;
}
