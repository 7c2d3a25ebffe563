// The rate of a profile over temperature: of one stage, or of all its stages after each other.

import {Refusal} from '../records/refusal.ts';
import type {Profile} from '../records/schema/index.ts';
import {landmarksOf, rateModel} from '../thermal/rate-model.ts';

export interface ProfileCurve {
  /** "pupa", or "egg to pupa". */
  readonly what: string;
  readonly ratePerDay: (temperatureC: number) => number;
  /** Published days at constant temperatures over the same stages. */
  readonly points: readonly {readonly temperature: number; readonly days: number}[];
  /** Temperatures between which there is something to see. */
  readonly fromC: number;
  readonly toC: number;
}

/** Where a rate without an end is drawn to. */
const WARM_C = 35;
const COLD_C = 5;
const MARGIN_C = 2;

/** Of a group: of its middle member. @throws Refusal where the profile has no such stage */
export function profileCurve(profile: Profile, stage?: string): ProfileCurve {
  if ('undated' in profile)
    throw new Refusal(
      `${profile.name} have no curve: ${profile.undated.why.replace(/\.$/, '')}`,
      profile.profile,
      'Count their moults; a profile of your own from your own lots would give dates.',
    );
  const names = profile.stages.map(each => each.stage);
  const at = stage === undefined ? -1 : names.indexOf(stage);
  if (stage !== undefined && at < 0)
    throw new Refusal(
      `${profile.profile} has no stage "${stage}"`,
      '--stage',
      `Its stages are ${names.join(', ')}.`,
    );
  const [from, to] = stage === undefined ? [names[0]!, names.at(-1)!] : [stage, stage];
  const what = from === to ? from : `${from} to ${to}`;
  if ('variation' in profile) {
    const {lnDaysAt20, lowerC} = profile.variation;
    const share = stage === undefined ? 1 : profile.stages[at]!.share;
    const degreeDays = share * Math.exp(lnDaysAt20.mean) * (20 - lowerC.mean);
    const ratePerDay = (temperatureC: number) => Math.max(0, temperatureC - lowerC.mean) / degreeDays;
    return {what, ratePerDay, points: [], fromC: Math.floor(lowerC.mean - MARGIN_C), toC: WARM_C};
  }
  const shown = profile.stages.filter((_, i) => stage === undefined || i === at).map(({rate}) => rate);
  const models = shown.map(rateModel);
  const points = [
    ...shown.flatMap(rate => (shown.length === 1 && rate.kind === 'table' ? rate.points : [])),
    ...(profile.published ?? [])
      .filter(each => each.from === from && each.to === to)
      .flatMap(each => each.points),
  ];
  const marks = shown.map(landmarksOf);
  const tested = points.map(({temperature}) => temperature);
  return {
    what,
    ratePerDay: temperatureC =>
      1 / models.reduce((sum, {ratePerDay}) => sum + 1 / ratePerDay(temperatureC), 0),
    points,
    fromC: Math.floor(Math.min(...marks.map(({lowerC}) => lowerC ?? COLD_C), ...tested) - MARGIN_C),
    toC: Math.ceil(Math.max(...marks.map(({upperC}) => upperC ?? WARM_C), ...tested) + MARGIN_C),
  };
}
