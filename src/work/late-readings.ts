// What readings that came late change: degree-days that were estimated, and the dates that rested on them.
import {instantWords} from '../exchange/time-words.ts';
import {instantOf, MS_PER_DAY} from '../records/entry.ts';
import {type Lot, openLots} from '../records/state.ts';
import type {Room} from '../room/room.ts';
import type {Desk} from './desk.ts';
import {halfOf, type Outlook, outlooks} from './outlook.ts';

/** A lot's sum and date as they were told before, and as they are now. */
export interface ChangedOutlook {
  readonly lot: string;
  /** Hours that were filled in, and still are. */
  readonly filledHours: {readonly from: number; readonly to: number};
  /** Degree-days of the present stage; null where it does not count in them. */
  readonly degreeDays: {readonly from: number; readonly to: number; readonly required: number} | null;
  /** When half are out, or one of hidden animals; null where that is not known. */
  readonly p50: {readonly from: string | null; readonly to: string | null};
}

/** Whether readings fill a gap between others: what a logger adds after its last ones comes every week. */
export function isLate(fromDays: number, lastReadDays: number | undefined): boolean {
  return lastReadDays !== undefined && fromDays < lastReadDays;
}

/** The lots whose sum or date readings of a logger changed. @param before the room as it was without them */
export async function changedOutlooks(before: Desk, room: Room, logger: string): Promise<ChangedOutlook[]> {
  const codes = openLots(before.state)
    .filter(lot => lot.candidates.length > 0 && isReadBy(lot, logger, before))
    .map(({code}) => code);
  if (codes.length === 0) return [];
  const [then, now] = await Promise.all([outlooks(before, {codes}), outlooks({...before, room}, {codes})]);
  return then.flatMap((old, i) => changeOf(old, now[i]!, before));
}

/** The logger stood in a unit while the lot lived there, or may have. */
function isReadBy({stays}: Lot, logger: string, {state}: Desk): boolean {
  return stays.some(({unit}) => state.units.get(unit)?.some(({value}) => value.logger === logger) === true);
}

/** Below these nobody sees a change. */
const SAME_HOURS = 0.05;
const SAME_DEGREE_DAYS = 0.05;

function changeOf(old: Outlook, now: Outlook, {civil}: Desk): ChangedOutlook[] {
  const filledHours = {from: old.readings.filledHours, to: now.readings.filledHours};
  const [a, b] = [old.forecast.degreeDays, now.forecast.degreeDays];
  const degreeDays =
    a === null || b === null || a.stage !== b.stage
      ? null
      : {from: a.accumulated, to: b.accumulated, required: b.required};
  const isSame =
    Math.abs(filledHours.from - filledHours.to) < SAME_HOURS &&
    (degreeDays === null || Math.abs(degreeDays.from - degreeDays.to) < SAME_DEGREE_DAYS);
  if (isSame) return [];
  const iso = ({forecast}: Outlook) => {
    const days = halfOf(forecast);
    return days === null ? null : civil.iso(days * MS_PER_DAY);
  };
  return [{lot: old.lot.code, filledHours, degreeDays, p50: {from: iso(old), to: iso(now)}}];
}

/** "P4: 58.0 h that were estimated are read now; 190.4 → 187.1 degree-days of 400; half out Sat 3 May 10:00 → …" */
export function changedWords(
  {lot, filledHours, degreeDays, p50}: ChangedOutlook,
  {civil, now}: Pick<Desk, 'civil' | 'now'>,
): string {
  const when = (iso: string | null) =>
    iso === null ? 'not known' : instantWords(instantOf(iso), civil, now);
  const read = filledHours.from - filledHours.to;
  const dates = when(p50.from) === when(p50.to) ? when(p50.to) : `${when(p50.from)} → ${when(p50.to)}`;
  return [
    ...(read >= SAME_HOURS ? [`${read.toFixed(1)} h that were estimated are read now`] : []),
    ...(degreeDays === null
      ? []
      : [
          `${degreeDays.from.toFixed(1)} → ${degreeDays.to.toFixed(1)} degree-days of ${degreeDays.required.toFixed(0)}`,
        ]),
    ...(p50.from === null && p50.to === null ? [] : [`half out ${dates}`]),
  ]
    .map((part, i) => (i === 0 ? `${lot}: ${part}` : part))
    .join('; ');
}
