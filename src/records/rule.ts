// What a rule of the daybook is: it looks at one entry in its room and may find fault with it.
import type {Civil} from './civil.ts';
import type {Dated} from './counting.ts';
import type {Instant} from './entry.ts';
import type {RoomState} from './state.ts';

/** What the rules know beside the daybook. */
export interface Known {
  /** Nothing may be dated later. */
  readonly now: Instant;
  readonly civil: Civil;
  /** Codes of all profiles a lot may name, beside those the room brought itself. */
  readonly profiles: ReadonlySet<string>;
}

/** What is wrong with an entry, and what to do about it: as in Refusal. */
export interface Fault {
  readonly what: string;
  readonly mend: string;
  /** It may be no animal of its lot: a parasitoid, a scavenger, or a mistake. */
  readonly isStranger?: true;
}

/** @returns undefined where the entry is right, as far as this rule goes */
export type Rule = (room: RoomState, each: Dated, known: Known) => Fault | undefined;

/** The first fault that any of the rules finds. */
export function firstFault(
  rules: readonly Rule[],
  room: RoomState,
  each: Dated,
  known: Known,
): Fault | undefined {
  for (const rule of rules) {
    const fault = rule(room, each, known);
    if (fault !== undefined) return fault;
  }
  return undefined;
}
