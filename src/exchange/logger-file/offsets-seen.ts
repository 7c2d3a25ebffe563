// The offsets that a file's instants carry, and the zone they add up to.
import type {Instant} from '../../records/entry.ts';
import {fixedZone, offsetText, type Zone, zoneWith} from '../zone.ts';

interface Change {
  readonly at: Instant;
  readonly offsetMs: number;
}

/** Gathers the offset of every row, in the order of the file. */
export class OffsetsSeen {
  readonly #changes: Change[] = [];
  #last = Number.NaN;
  #someWithout = false;

  /** @param offsetMs NaN where the instant carries none */
  see(at: Instant, offsetMs: number): void {
    if (offsetMs === this.#last) return;
    if (Number.isNaN(offsetMs)) this.#someWithout = true;
    else this.#changes.push({at, offsetMs});
    this.#last = offsetMs;
  }

  /** The zone of the file's civil days: its own offset, changing where it changes, else the one it was read in. */
  zone(readIn: Zone): Zone {
    const [first] = this.#changes;
    if (first === undefined || this.#someWithout) return readIn;
    const changes = this.#changes.toSorted((a, b) => a.at - b.at);
    const distinct = [...new Set(changes.map(({offsetMs}) => offsetMs))];
    if (distinct.length === 1) return fixedZone(first.offsetMs);
    const name = `UTC${distinct.map(offsetText).join(' and UTC')}`;
    return zoneWith(name, at => lastUpTo(changes, at).offsetMs);
  }
}

/** The last change at or before an instant, else the first. */
function lastUpTo(changes: readonly Change[], at: Instant): Change {
  let low = 0;
  let high = changes.length - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if (changes[middle]!.at <= at) low = middle;
    else high = middle - 1;
  }
  return changes[low]!;
}
