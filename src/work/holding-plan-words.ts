// A plan for the day adults are wanted, in words and as `teneral plan` answers it.
import {dayWords, instantWords} from '../exchange/time-words.ts';
import type {Instant} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import type {HoldingPlan} from './holding-plan.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';

export function holdingPlanWords(plan: HoldingPlan, {civil, now}: Desk): SaidLines {
  const {lot, share, adultsBy, limits, holdC, earliestC} = plan;
  const when = (at: Instant | null) => (at === null ? 'not within a year' : instantWords(at, civil, now));
  const title = `${lot} · ${shareWords(share)} of the adults out by ${dayWords(adultsBy, civil, now)}`;
  const reach = `${earliestC === null ? '' : `${degrees(earliestC)} °C: `}${when(plan.earliest)}`;
  const hold =
    holdC === null
      ? `no temperature between ${limits.low} and ${limits.high} °C does it`
      : plan.early
        ? `${degrees(holdC)} °C, the lowest they bear: out before the day, ${when(plan.at)}`
        : `${degrees(holdC)} °C from now on: out ${when(plan.at)}`;
  return {
    title,
    lines: [
      ['hold', hold],
      ['as it is', when(plan.asItIs)],
      ['earliest', reach],
      ['latest', `${degrees(limits.low)} °C: ${when(plan.latest)}`],
      ['limits', `${limits.low} to ${limits.high} °C, of ${limits.from}`],
      ...plan.units.map(
        ({unit, place, at}): SaidLine => [
          unit,
          `${when(at)}, at ${place}${at !== null && civil.dayOf(at) > adultsBy ? ', too late' : ''}`,
        ],
      ),
      ...plan.unfit.map(({unit, why}): SaidLine => [unit, `not fit: ${why}`]),
    ],
  };
}

export function holdingPlanAnswer(plan: HoldingPlan, {civil}: Desk) {
  const iso = (at: Instant | null) => (at === null ? null : civil.iso(at));
  return {
    lot: plan.lot,
    adultsBy: plan.adultsBy,
    share: plan.share,
    possible: plan.possible,
    holdC: plan.holdC,
    p50: iso(plan.at),
    earliest: iso(plan.earliest),
    latest: iso(plan.latest),
    asItIs: iso(plan.asItIs),
    limits: {lowC: plan.limits.low, highC: plan.limits.high, from: plan.limits.from},
    units: plan.units.map(({unit, at}) => ({unit, p50: iso(at)})),
    unfit: plan.unfit,
  };
}

function shareWords(share: number): string {
  return share === 0.5 ? 'half' : `${Math.round(share * 100)} %`;
}

function degrees(celsius: number): string {
  return String(Math.round(celsius * 10) / 10);
}
