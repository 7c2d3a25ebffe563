// What a course is composed from.
import type {Civil} from '../records/civil.ts';
import type {Lot, RoomState} from '../records/state.ts';
import type {Series} from './series.ts';

export interface CourseInput {
  /** Where the lot lived, oldest first; at least one stay. */
  readonly stays: Lot['stays'];
  /** Histories of units and loggers, and what people read or masked. */
  readonly room: Pick<RoomState, 'units' | 'loggers' | 'masks' | 'handReadings' | 'extremes'> &
    Partial<Pick<RoomState, 'water'>>;
  /** Imported readings of a logger, as far as they are at hand; see readingsNeeded. Masks are honoured here. */
  readonly readings: (logger: string) => Series | undefined;
  readonly civil: Civil;
  readonly fromDays: number;
  readonly nowDays: number;
  readonly toDays: number;
  /** A scenario: held at this temperature from where readings end. */
  readonly holdC?: number | undefined;
  /** Whether the water's own temperature is gone by from its first measurement on, or never; default: from the third. */
  readonly waterAs?: 'measured' | 'air' | undefined;
  /** How many futures are wanted beside the one course expected. */
  readonly futures?: number | undefined;
}
