// Why a task stands on the list, as one sentence.
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {total} from '../records/stage.ts';
import type {Rule} from '../records/state.ts';
import {ownHoldHours} from './hold-time.ts';
import type {Job} from './job.ts';
import {feeders} from './stages.ts';
import type {EmergenceOutlook} from './task.ts';
import {everyWords, spanWords, whenWords} from './when-words.ts';
import {daysAtReference, longestDays, REFERENCE_C, type Window} from './window.ts';

export interface WhyCase {
  readonly job: Job;
  readonly window: Window;
  /** When it was last done; undefined when it never was since it came to be needed. */
  readonly last: Instant | undefined;
  readonly planned: Instant | null;
  /** Moved to a day with less work. */
  readonly levelled: boolean;
  readonly outlook: EmergenceOutlook | undefined;
  readonly now: Instant;
  readonly civil: Civil;
}

/** "last fed Tue 16:30; every 2 days, never over 3 days". */
export function whyOf(each: WhyCase): string {
  const parts = [lastTime(each), howOften(each), ration(each), oldCount(each), moved(each)];
  return parts.filter(part => part !== undefined).join('; ');
}

function lastTime({job, last, now, civil, window}: WhyCase): string | undefined {
  if (job.rule.when !== undefined) return undefined;
  const deed = deeds[job.rule.task] ?? `done (${job.rule.task})`;
  return last === undefined
    ? `not ${deed} yet, since ${whenWords(window.since, now, civil)}`
    : `last ${deed} ${whenWords(last, now, civil)}`;
}

const deeds: Readonly<Record<string, string>> = {
  feed: 'fed',
  'give-water': 'watered',
  clean: 'cleaned',
  'change-water': 'changed',
  'top-up': 'topped up',
  moisten: 'moistened',
  'check-air': 'checked',
  'check-cold': 'checked',
  look: 'looked at',
  inspect: 'looked over',
  'move-pupae': 'moved',
  label: 'labelled',
  'freeze-waste': 'frozen',
  'clean-out': 'cleaned out',
  close: 'closed',
};

function howOften({job: {rule, lot}, window, outlook, now, civil}: WhyCase): string {
  if (rule.when !== undefined) return triggerWords(rule.when, window, now, civil);
  if (finished.has(rule.task)) return 'nobody in the lot is alive any more';
  if (rule.task === 'look' && outlook !== undefined && outlook.startChecking !== null) {
    return lookWords(outlook, rule, now, civil);
  }
  const limit = (window.latest - window.since) / MS_PER_DAY;
  const warmth = 'days' in rule.every || lot === undefined ? '' : shift(rule.every, window);
  return `${interval(rule, window)}, never over ${spanWords(limit)}${warmth}`;
}

function triggerWords(
  when: NonNullable<Rule['when']>,
  {since, latest}: Window,
  now: Instant,
  civil: Civil,
): string {
  const limit = `at the latest ${whenWords(latest, now, civil)}`;
  if ('pupated' in when) return `${Math.round(when.pupated * 100)} % were counted as pupae; ${limit}`;
  if ('adultWithinDays' in when)
    return `the first adult is expected ${whenWords(since + when.adultWithinDays * MS_PER_DAY, now, civil)}; ${limit}`;
  if ('hardened' in when) return `adults have hardened since ${whenWords(since, now, civil)}; ${limit}`;
  if ('subimago' in when)
    return `a subimago moults within hours to two days, and both skins are kept; ${limit}`;
  if ('chilledWeeks' in when) return `${when.chilledWeeks} weeks of cold are complete; ${limit}`;
  return `mould was seen ${whenWords(since, now, civil)}; not moistened until it is gone`;
}

function lookWords({p05, holdHours}: EmergenceOutlook, rule: Rule, now: Instant, civil: Civil): string {
  const when = p05 === null ? '' : whenWords(p05, now, civil);
  const out =
    p05 === null ? [] : [p05 < now ? `adults may be out since ${when}` : `one in twenty is out ${when}`];
  const own = ownHoldHours(rule);
  const kind = holdHours === undefined ? [] : [`none is to wait over ${holdHours} hours`];
  const wait =
    own === undefined
      ? kind
      : [
          `by this room’s rule ${rule.code} none is to wait over ${spanWords(own / 24)}${holdHours === undefined ? '' : ` (its kind: ${holdHours} hours)`}`,
        ];
  return [...out, ...wait].join('; ');
}

const finished = new Set(['label', 'freeze-waste', 'clean-out', 'close']);

function interval({every}: Rule, {since, target}: Window): string {
  if ('degreeDays' in every) return `every ${every.degreeDays} degree-days above ${every.lower} °C`;
  const days = (target - since) / MS_PER_DAY;
  return everyWords(days > 0 ? every.days : Math.max(days, every.days));
}

/** How the warmth of the lot moved it against 20 °C. */
function shift(every: {degreeDays: number; lower: number}, {since, target}: Window): string {
  const hours = Math.round(((target - since) / MS_PER_DAY - daysAtReference(every)) * 24);
  if (hours === 0) return `; as at ${REFERENCE_C} °C`;
  const moved = spanWords(Math.abs(hours) / 24);
  if (hours < 0) return `; warmth moves it up ${moved}`;
  const isLongest = (target - since) / MS_PER_DAY >= longestDays(every);
  return `; cool puts it off ${moved}${isLongest ? ', the most it may' : ''}`;
}

/** Food goes down with the number that still eat. */
function ration({job: {rule, lot}}: WhyCase): string | undefined {
  if (rule.task !== 'feed' || lot === undefined) return undefined;
  const all = total(lot.alive);
  const eating = feeders(lot);
  if (eating === 0 || eating === all) return undefined;
  return `${eating} of ${all} still eat: ${Math.round((100 * eating) / all)} % of the ration`;
}

/** In so many days animals have grown out of the stages they were counted in. Common practice, no source. */
const OLD_COUNT_DAYS = 3;

/** An amount by stage is no better than the count of the stages. */
function oldCount({job: {rule, lot}, now, civil}: WhyCase): string | undefined {
  if (rule.amount === undefined || !('each' in rule.amount) || lot === undefined) return undefined;
  if (typeof rule.amount.each === 'number') return undefined;
  const counted = lot.sightings.findLast(({kind}) => kind === 'count')?.at ?? lot.startedAt;
  if (now - counted < OLD_COUNT_DAYS * MS_PER_DAY) return undefined;
  return `the amount is for the stages counted ${whenWords(counted, now, civil)}`;
}

function moved({planned, levelled, window: {target}, civil, now}: WhyCase): string | undefined {
  if (planned === null) return 'no open round is in time: a visit is needed';
  if (civil.dayOf(planned) === civil.dayOf(target)) return undefined;
  if (levelled)
    return `${planned < target ? 'brought forward' : 'put off'} from ${whenWords(target, now, civil)} to even out the days`;
  return `${planned < target ? 'brought forward' : 'put off'} from ${whenWords(target, now, civil)}, when the room is closed`;
}
