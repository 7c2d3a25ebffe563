// What the care list needs to know of each lot's emergence, kept in the room's cache while nothing it rests on changes.
import {createHash} from 'node:crypto';
import {kindHoldHours} from '../care/hold-time.ts';
import type {EmergenceOutlook} from '../care/task.ts';
import type {LotForecast} from '../development/answer.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {lineOf} from '../records/lineage.ts';
import type {Profile} from '../records/schema/index.ts';
import {type Lot, openLots} from '../records/state.ts';
import {readCache, writeCache} from '../room/cache.ts';
import {version} from '../version.ts';
import type {Desk} from './desk.ts';
import {keepStages, stageDays} from './kept-stages.ts';
import {finishedLots} from './lessons.ts';
import {forecaster} from './outlook.ts';
import {profilesOf} from './profiles.ts';

const CACHE_NAME = 'expectations';

interface Kept {
  /** Of the room as it stood: while it stands so, nothing need be looked at lot by lot. */
  readonly room: string;
  readonly lots: Readonly<
    Record<
      string,
      {
        /** Of everything the expectation rests on. */
        readonly of: string;
        /** Null where the lot has no forecast. */
        readonly outlook: EmergenceOutlook | null;
      }
    >
  >;
}

/** By lot. Only lots about which something changed since the last time are forecast anew. */
export async function expectations(
  desk: Desk,
  profiles: ReadonlyMap<string, Profile>,
): Promise<Map<string, EmergenceOutlook>> {
  const kept = await keptIn(desk);
  const room = standOf(desk);
  if (kept?.room === room) return outlooksIn(kept);
  const lots = openLots(desk.state);
  const shared = fingerprintOfRoom(desk);
  const prints = new Map(lots.map(lot => [lot.code, fingerprintOf(lot, shared, desk)]));
  const stale = lots.filter(({code}) => kept?.lots[code]?.of !== prints.get(code));
  const forecastOf = forecaster(desk, stale, {sharesOn: stageDays(desk)});
  const forecasts = new Map(await Promise.all(stale.map(async lot => [lot, await forecastOf(lot)] as const)));
  const fresh = new Map(
    [...forecasts].map(([lot, forecast]) => [lot.code, expectationOf(lot, forecast, profiles)] as const),
  );
  const all = lots.map(({code}) => {
    const outlook = fresh.get(code);
    return [code, outlook === undefined ? kept!.lots[code]! : {of: prints.get(code)!, outlook}] as const;
  });
  if (stale.length > 0) await keepStages(desk, forecasts, prints);
  const now: Kept = {room, lots: Object.fromEntries(all)};
  await writeCache(desk.room, CACHE_NAME, now);
  return outlooksIn(now);
}

function outlooksIn({lots}: Kept): Map<string, EmergenceOutlook> {
  return new Map(
    Object.entries(lots).flatMap(([code, {outlook}]) => (outlook === null ? [] : [[code, outlook]])),
  );
}

/** Tells the room as it stands on one day from itself after any change, and from what it was before some entries. */
function standOf({room, state, civil, now}: Desk): string {
  return [version, room.revision, civil.dayOf(now), state.entries.length].join(' ');
}

/** The cache is the program's own and sealed with a checksum; a damaged one, or one of another form, reads as nothing. */
async function keptIn({room}: Desk): Promise<Kept | undefined> {
  const kept = (await readCache(room, CACHE_NAME)) as Partial<Kept> | undefined;
  return kept?.lots === undefined ? undefined : (kept as Kept);
}

function expectationOf(
  lot: Lot,
  forecast: LotForecast,
  profiles: ReadonlyMap<string, Profile>,
): EmergenceOutlook | null {
  if (forecast.status === 'unknown') return null;
  const at = (days: number | null) => (days === null ? null : days * MS_PER_DAY);
  return {
    startChecking: at(forecast.startCheckingDays),
    nextCheck: at(forecast.nextCheckDays),
    p05: at(forecast.animal.p05),
    p95: at(forecast.animal.p95),
    holdHours: kindHoldHours(lot, profiles),
  };
}

/**
 * The climate, the furniture, the calendar, the settings, the room's rules for looks, the finished lots and the day, which
 * all lots share. While nothing is read or seen, an hour more changes next to nothing of when to look; so what was worked
 * out in the morning serves the whole day.
 */
export function fingerprintOfRoom({state, room, civil, now}: Desk): string {
  const furniture = [...state.units.values(), ...state.loggers.values()];
  const spans = [...state.loggers.keys()].map(logger => room.span(logger));
  const byHand = [
    state.handReadings.length,
    state.handReadings.at(-1)?.entry,
    state.extremes.length,
    state.extremes.at(-1)?.entry,
    state.water.length,
    state.water.at(-1)?.entry,
  ];
  const finished = finishedLots(state).map(({code, entries}) => [code, entries.length]);
  const day = civil.dayOf(now);
  return hashOf([
    version,
    furniture,
    spans,
    state.masks,
    byHand,
    state.calendar,
    state.settings,
    [...state.rules.values()].filter(({task}) => task === 'look'),
    day,
    finished,
  ]);
}

/** What the forecast of one lot rests on, beside the time. */
export function fingerprintOf(lot: Lot, shared: string, {state}: Desk): string {
  const profiles = lot.candidates.map(({profile}) => state.profiles.get(profile) ?? profile);
  return hashOf([shared, lot.candidates, profiles, lineOf(lot, state.lots), lot.alive]);
}

function hashOf(value: unknown): string {
  return createHash('sha256').update(JSON.stringify(value)).digest('base64url');
}

/** The profiles of all open lots' candidates. */
export function candidateProfiles(desk: Desk): Promise<Map<string, Profile>> {
  return profilesOf(
    openLots(desk.state).flatMap(({candidates}) => candidates.map(({profile}) => profile)),
    desk.state,
  );
}
