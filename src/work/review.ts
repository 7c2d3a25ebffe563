// Looking back: what was forecast for lots that are finished, by what was known then, against what came.
import type {LotForecast} from '../development/answer.ts';
import {asShare} from '../development/chance-words.ts';
import {MOSTLY} from '../development/rest.ts';
import {halfOutDays, type Looked, type Skill, skillOf} from '../development/skill.ts';
import type {Day} from '../records/civil.ts';
import {type Instant, instantOf, MS_PER_DAY} from '../records/entry.ts';
import type {Lot} from '../records/state.ts';
import {caser} from './cases.ts';
import type {Desk} from './desk.ts';
import {type Experience, experienceOf, type LotLesson} from './experience.ts';
import {finishedLots, lessonsOf} from './lessons.ts';
import {forecaster} from './outlook.ts';
import {profilesOf} from './profiles.ts';
import {replayOf} from './replay.ts';

export const WHENS = ['start', 'half', 'three-days'] as const;
export type When = (typeof WHENS)[number];

export interface SkillWhen extends Skill {
  readonly when: When;
}

/** One forecast of the past beside what came. */
export interface Replayed extends Looked {
  readonly lot: string;
  readonly profile: string;
  readonly when: When;
  readonly asOf: Instant;
}

/** A forecast that cannot be held against what came. */
export interface PassedOver {
  readonly lot: string;
  /** Null where it is so of all of the lot's. */
  readonly when: When | null;
  readonly why: string;
}

export interface Review {
  readonly lots: number;
  readonly forecasts: readonly SkillWhen[];
  readonly profiles: readonly ProfileReview[];
  readonly replayed: readonly Replayed[];
  readonly passedOver: readonly PassedOver[];
}

export interface ProfileReview {
  readonly profile: string;
  readonly lots: number;
  readonly forecasts: readonly SkillWhen[];
  /** What the next lot of the profile begins from. */
  readonly experience: Omit<Experience, 'profile'>;
}

const BEFORE_DAYS = 3;

/** @param since only lots finished on this day or later */
export async function review(desk: Desk, since?: Day): Promise<Review> {
  const lessons = await lessonsOf(desk);
  const lots = finishedLots(desk.state).filter(
    ({closed}) => since === undefined || desk.civil.dayOf(closed!.at) >= since,
  );
  const replayed: Replayed[] = [];
  const passedOver: PassedOver[] = [];
  const profileOf = new Map(lessons.map(({lot, candidates}) => [lot, candidates[0]?.profile] as const));
  const reviewed = lots.flatMap(lot => {
    const profile = profileOf.get(lot.code) ?? lot.candidates[0]?.profile;
    if (profile !== undefined) return [{lot, profile}];
    passedOver.push({lot: lot.code, when: null, why: 'it has no candidate'});
    return [];
  });
  for (const {lot, profile} of reviewed)
    for (const told of await replay(lot, profile, desk, lessons))
      if ('why' in told) passedOver.push(told);
      else replayed.push(told);
  const codes = [...new Set(reviewed.map(({profile}) => profile))].sort();
  const profiles = await profilesOf(codes, desk.state);
  return {
    lots: lots.length,
    forecasts: skills(replayed),
    profiles: codes.map(profile => {
      const candidates = [{profile, weight: 1}];
      const [known] = experienceOf({code: '', candidates}, profiles, lessons);
      return {
        profile,
        lots: reviewed.filter(each => each.profile === profile).length,
        forecasts: skills(replayed.filter(each => each.profile === profile)),
        experience: {pace: known?.pace ?? null, survival: known?.survival ?? null},
      };
    }),
    replayed,
    passedOver,
  };
}

function skills(replayed: readonly Replayed[]): SkillWhen[] {
  return WHENS.map(when => ({when, ...skillOf(replayed.filter(each => each.when === when))}));
}

/** The forecasts of a finished lot at its start, half way and three days before half of its adults were out. */
async function replay(
  lot: Lot,
  profile: string,
  desk: Desk,
  lessons: readonly LotLesson[],
): Promise<(Replayed | PassedOver)[]> {
  const {request} = await caser(desk, [lot], {futures: 0, lessons: [], alone: true})(lot);
  const outcome = halfOutDays(request.sightings);
  if (outcome === undefined)
    return [
      {lot: lot.code, when: null, why: 'its adults came in another lot that it was split into or from'},
    ];
  const start = startOf(lot) / MS_PER_DAY;
  const instants: Record<When, number> = {
    start,
    half: (start + outcome) / 2,
    'three-days': outcome - BEFORE_DAYS,
  };
  const deskAt = replayOf(desk, lot);
  const told: (Replayed | PassedOver)[] = [];
  for (const when of WHENS) {
    const passOver = (why: string) => told.push({lot: lot.code, when, why});
    const asOf = instants[when] * MS_PER_DAY;
    if (instants[when] < start || instants[when] >= outcome) {
      passOver('the lot was not written down by then');
      continue;
    }
    const then = deskAt(asOf);
    const lotThen = then.state.lots.get(lot.code);
    if (lotThen === undefined || lotThen.closed !== undefined) {
      passOver('by what was written down then it was no open lot');
      continue;
    }
    const known = lessons.filter(({knownAt}) => knownAt <= asOf);
    const used = then.state.settings.finishedLots === 'left-out' ? [] : known;
    const forecast = await forecaster(then, [lotThen], {lessons: used})(lotThen);
    const {half} = forecast;
    if (half === null || half.p50 === null) passOver(whyUndated(forecast));
    else
      told.push({lot: lot.code, profile, when, asOf, p10: half.p10, p50: half.p50, p90: half.p90, outcome});
  }
  return told;
}

/** Why no date was given, as it was said then. */
function whyUndated({rest, status, assumptions}: LotForecast): string {
  if (rest.chance >= MOSTLY) return `no date then: ${asShare(rest.chance)} were taken to rest`;
  if (status === 'unknown') return `no date then: ${assumptions[0]}`;
  return 'no date then: at the temperatures expected then, half would not have been out within 400 days';
}

/** When the lot began and that was written down. */
function startOf({entries, startedAt}: Lot): Instant {
  return Math.max(startedAt, ...entries.slice(0, 1).map(({recordedAt}) => instantOf(recordedAt)));
}
