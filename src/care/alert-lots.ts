// Lots that nobody has looked at since they began.
import {MS_PER_DAY} from '../records/entry.ts';
import type {Lot} from '../records/state.ts';
import type {Alert} from './alert.ts';
import {grouped} from './grouped.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {dateWords} from './when-words.ts';

/** So long may a new lot stand without anything being written down of it. Common practice, no source. */
const UNSEEN_DAYS = 7;

export function neverLookedAt({state, civil, now}: CareInput): Alert[] {
  const cared = new Set(state.care.flatMap(({lot, skipped}) => (lot === undefined || skipped ? [] : [lot])));
  const caredUnits = grouped(
    state.care.filter(({skipped}) => skipped === undefined),
    ({unit}) => unit,
  );
  const isUnseen = (lot: Lot) =>
    lot.sightings.length === 0 &&
    lot.looks.length === 0 &&
    !cared.has(lot.code) &&
    !lot.stays.some(({unit, from, to = Number.POSITIVE_INFINITY}) =>
      caredUnits.get(unit)?.some(({at}) => from <= at && at <= to),
    );
  return [...state.lots.values()]
    .filter(lot => isLiving(lot) && now - lot.startedAt > UNSEEN_DAYS * MS_PER_DAY && isUnseen(lot))
    .map(lot => ({
      id: `unseen:${lot.code}`,
      what: `nothing was written down of lot ${lot.code} since it began on ${dateWords(lot.startedAt, civil)}`,
      where: lot.code,
      since: lot.startedAt,
      mend: `Look at it and say what you saw (teneral count ${lot.code} … or teneral check ${lot.code}).`,
    }));
}
