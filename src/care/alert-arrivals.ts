// Field samples that nobody has sorted yet, and food that runs out.
import {MS_PER_DAY} from '../records/entry.ts';
import type {CareDone, RoomState} from '../records/state.ts';
import type {Alert} from './alert.ts';
import {isLiving} from './stages.ts';
import type {CareInput} from './task.ts';
import {dateWords} from './when-words.ts';

/** A living catch is sorted within a day: advised for mosquito collections, Methods in Anopheles Research, ch. 7.1 (excerpt seen). */
const UNSORTED_DAYS = 1;

/** Samples that met no killing agent or preservative, and of which no lot was begun. */
export function unsortedSamples({state, civil, now}: CareInput): Alert[] {
  const sorted = new Set([...state.lots.values()].map(({sample}) => sample));
  return [...state.samples.values()]
    .filter(
      ({code, medium, at}) =>
        medium === 'none' &&
        !sorted.has(code) &&
        now - at > UNSORTED_DAYS * MS_PER_DAY &&
        !isPreserved(code, state),
    )
    .map(({code, at}) => ({
      id: `unsorted:${code}`,
      what: `field sample ${code} came in on ${dateWords(at, civil)} and is not sorted yet`,
      where: code,
      since: at,
      mend: `Sort it into lots (teneral lot … --sample ${code}), or say what became of it (teneral note ${code}, then acknowledge this).`,
    }));
}

/** Something was preserved from it at once. */
function isPreserved(code: string, {specimens, lots}: RoomState): boolean {
  return [...specimens.values()].some(({lot}) => lots.get(lot ?? '')?.sample === code);
}

/** The last feeding of a living lot said that its food is low, or it could not be fed for want of food. */
export function foodRunningOut({state, civil}: CareInput): Alert[] {
  const feedings = state.care.filter(({task}) => task === 'feed');
  const ofLot = new Map(feedings.map(fed => [fed.lot, fed]));
  const ofUnit = new Map(feedings.filter(({lot}) => lot === undefined).map(fed => [fed.unit, fed]));
  return [...state.lots.values()].filter(isLiving).flatMap(lot => {
    const unit = lot.stays.at(-1)?.unit;
    const own = ofLot.get(lot.code);
    const shared = unit === undefined ? undefined : ofUnit.get(unit);
    const last = own === undefined || (shared !== undefined && shared.at >= own.at) ? shared : own;
    if (last === undefined || !isShort(last)) return [];
    const host = state.samples.get(lot.sample ?? '')?.host;
    return [
      {
        id: `food:${lot.code}:${civil.dayOf(last.at)}`,
        what: `food for ${lot.code} in ${unit} runs out${host === undefined ? '' : ` (${host})`}: ${last.skipped ?? `stock ${last.seen.foodStock}`}, ${last.by} on ${dateWords(last.at, civil)}`,
        where: lot.code,
        since: last.at,
        mend: 'Get some before the next feeding is due; the next feeding with foodStock=enough, or without a word of it, ends this.',
      },
    ];
  });
}

function isShort({skipped, seen}: CareDone): boolean {
  if (skipped !== undefined)
    return /\b(no|out of|ran out|run out|short of|lack of|without)\b.*\b(food|lea(f|ves)|plants?|prey|diet|aphids|fodder)\b/i.test(
      skipped,
    );
  return seen.foodStock === 'none' || seen.foodStock === 'low';
}
