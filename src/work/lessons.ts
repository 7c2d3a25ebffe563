// The lessons of a room's finished lots, kept in its cache: each lot is learned from once.
import {createHash} from 'node:crypto';
import {lessonsIn} from '../development/lesson.ts';
import {instantOf} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import type {Lot, RoomState} from '../records/state.ts';
import {readCache, writeCache} from '../room/cache.ts';
import {version} from '../version.ts';
import {caser} from './cases.ts';
import type {Desk} from './desk.ts';
import type {LotLesson} from './experience.ts';

const CACHE_NAME = 'lessons';

interface Kept {
  /** Of what the lesson rests on. */
  readonly of: string;
  readonly lesson: LotLesson;
}

/**
 * What every finished lot at hand taught. Those that were put into the archive are known from the cache; where that is
 * gone, `review`, which looks at everything, brings them back.
 */
export async function lessonsOf(desk: Desk): Promise<readonly LotLesson[]> {
  const kept = ((await readCache(desk.room, CACHE_NAME)) ?? {}) as Readonly<Record<string, Kept>>;
  const finished = finishedLots(desk.state);
  const all: Record<string, Kept> = {...kept};
  for (const lot of desk.state.lots.values()) if (!finished.includes(lot)) delete all[lot.code];
  const stale = finished.filter(lot => kept[lot.code]?.of !== printOf(lot, desk));
  for (const lot of stale) all[lot.code] = {of: printOf(lot, desk), lesson: await lessonOf(lot, desk)};
  if (stale.length > 0) await writeCache(desk.room, CACHE_NAME, all);
  return Object.values(all).map(({lesson}) => lesson);
}

/** Those that forecasts begin from: none where the room is set to begin as published. */
export async function lessonsUsed(desk: Desk): Promise<readonly LotLesson[]> {
  return desk.state.settings.finishedLots === 'left-out' ? [] : lessonsOf(desk);
}

/** Closed lots whose animals were counted and some of which emerged. */
export function finishedLots({lots}: Pick<RoomState, 'lots'>): Lot[] {
  return [...lots.values()].filter(
    lot =>
      lot.closed !== undefined &&
      lot.mergedInto === undefined &&
      !isHidden(lot) &&
      lot.tally.emerged > 0 &&
      lot.stays.length > 0,
  );
}

/** What was seen before a split is the lesson of the lot in which it was seen. */
async function lessonOf(lot: Lot, desk: Desk): Promise<LotLesson> {
  const {request} = await caser(desk, [lot], {futures: 0, horizonDays: 0, lessons: [], alone: true})(lot);
  const {started, hatched, mergedIn, found, emerged, preserved, splitOff, mergedOut} = lot.tally;
  return {
    lot: lot.code,
    knownAt: Math.max(...lot.entries.map(({recordedAt}) => instantOf(recordedAt))),
    candidates: lessonsIn(request),
    came: started + hatched + mergedIn + found - preserved - splitOff - mergedOut,
    emerged,
  };
}

function printOf({entries, candidates}: Lot, {state}: Desk): string {
  const profiles = candidates.map(({profile}) => state.profiles.get(profile) ?? profile);
  const rests = [version, entries.map(({id}) => id), candidates, profiles];
  return createHash('sha256').update(JSON.stringify(rests)).digest('base64url');
}
