// Readings as they are read, in growing columns; at the end in order of time, each instant once.
import type {Instant} from '../../records/entry.ts';
import {type Doubtful, tellPassesApart} from './wall-clock.ts';

export interface OrderedReadings {
  /** Instants, rising. */
  readonly at: Float64Array;
  readonly temperature: Float64Array;
  /** NaN where it is missing. */
  readonly rhPercent: Float64Array;
  /** Rows of an instant that an earlier row has. */
  readonly duplicates: number;
  /** Duplicates whose temperature is another than the earlier row's by more than rounding. */
  readonly conflicts: number;
}

export class ReadingColumns {
  #size = 0;
  #at = new Float64Array(1024);
  #temperature = new Float64Array(1024);
  #rhPercent = new Float64Array(1024);
  readonly #doubtful: Doubtful[] = [];

  get size(): number {
    return this.#size;
  }

  push(at: Instant, temperature: number, rhPercent: number): void {
    if (this.#size === this.#at.length) this.#grow();
    this.#at[this.#size] = at;
    this.#temperature[this.#size] = temperature;
    this.#rhPercent[this.#size] = rhPercent;
    this.#size++;
  }

  /** A reading whose time the clocks showed twice. */
  pushDoubtful(first: Instant, second: Instant, temperature: number, rhPercent: number): void {
    this.#doubtful.push({index: this.#size, first, second});
    this.push(first, temperature, rhPercent);
  }

  /** What was pushed, in order of time; of several readings of one instant the first that was pushed. */
  finish(): OrderedReadings {
    const at = this.#at.subarray(0, this.#size);
    tellPassesApart(at, this.#doubtful);
    const {keep, conflicts} = rising(at, this.#temperature);
    const pick = (column: Float64Array) =>
      keep === undefined ? column.slice(0, this.#size) : Float64Array.from(keep, row => column[row]!);
    return {
      at: pick(this.#at),
      temperature: pick(this.#temperature),
      rhPercent: pick(this.#rhPercent),
      duplicates: this.#size - (keep?.length ?? this.#size),
      conflicts,
    };
  }

  #grow(): void {
    const larger = (column: Float64Array) => {
      const grown = new Float64Array(2 * column.length);
      grown.set(column);
      return grown;
    };
    this.#at = larger(this.#at);
    this.#temperature = larger(this.#temperature);
    this.#rhPercent = larger(this.#rhPercent);
  }
}

/** Two readings of one instant that differ by more are two readings. */
const ROUNDING = 0.1;

/** Rows in order of time, each instant once; `keep` is undefined where they are so already. */
function rising(
  at: Float64Array,
  temperature: Float64Array,
): {readonly keep: Uint32Array | undefined; readonly conflicts: number} {
  let sorted = true;
  for (let i = 1; i < at.length && sorted; i++) sorted = at[i]! > at[i - 1]!;
  if (sorted) return {keep: undefined, conflicts: 0};
  const order = Uint32Array.from(at.keys()).sort((a, b) => at[a]! - at[b]! || a - b);
  let conflicts = 0;
  let first = order[0]!;
  const keep = order.filter((row, i) => {
    if (i > 0 && at[row] === at[first]) {
      if (Math.abs(temperature[row]! - temperature[first]!) > ROUNDING) conflicts++;
      return false;
    }
    first = row;
    return true;
  });
  return {keep, conflicts};
}
