// A plan for the day adults are wanted, in words and as `teneral plan` answers it.
import {dayWords, instantWords} from '../exchange/time-words.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import {limitsWords} from './bearable.ts';
import type {Desk} from './desk.ts';
import type {HoldingPlan, JudgedUnit, UnitMix} from './holding-plan.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';

export function holdingPlanWords(plan: HoldingPlan, {civil, now}: Desk): SaidLines {
  const {lot, share, adultsBy, limits, holdC, earliestC} = plan;
  const when = (at: Instant | null) => (at === null ? 'not within a year' : instantWords(at, civil, now));
  const by = plan.byInstant === undefined ? dayWords(adultsBy, civil, now) : when(plan.byInstant);
  const title = `${lot} · ${shareWords(share)} of the adults out by ${by}`;
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
      ...(plan.spread === null
        ? []
        : [
            [
              'there',
              `1 in 20 out ${when(plan.spread.p05)}, half ${when(plan.spread.p50)}, 19 in 20 ${when(plan.spread.p95)}`,
            ] as const,
          ]),
      ['as it is', when(plan.asItIs)],
      ['earliest', reach],
      ['latest', `${degrees(limits.low)} °C: ${when(plan.latest)}`],
      ['limits', limitsWords(limits)],
      ...plan.units.map(
        (each): SaidLine => [
          each.unit,
          `${degrees(each.expectedC)} °C at ${each.place}${each.from > now ? `, free from ${when(each.from)}` : ''}: ${share === 0.5 ? '' : `half ${when(each.p50)}, ${shareWords(share)} `}${when(each.at)}${judgedWords(each, plan)}`,
        ],
      ),
      ...(plan.mix === null ? [] : mixLines(plan.mix, share, when)),
      ...plan.unfit.map(({unit, why}): SaidLine => [unit, `not fit: ${why}`]),
      ...reserveLines(plan, when),
    ],
  };
}

/** How a unit as it stands would do; of one that is too early, by how much half are out before they need be. */
function judgedWords({judgement, p50}: JudgedUnit, {spread}: HoldingPlan): string {
  switch (judgement) {
    case 'in-time':
      return '';
    case 'late':
      return ', too late';
    case 'early': {
      const days = ((spread?.p50 ?? 0) - (p50 ?? 0)) / MS_PER_DAY;
      return `, ${days.toFixed(1)} days too early: many would be old or dead by then`;
    }
  }
}

type When = (at: Instant | null) => string;

function mixLines({first, afterwards, at, p50}: UnitMix, share: number, when: When): SaidLine[] {
  const said = share === 0.5 ? when(at) : `half ${when(p50)}, ${shareWords(share)} ${when(at)}`;
  return [
    [
      'both',
      `${first.days.toFixed(1)} days in ${first.unit} at ${degrees(first.celsius)} °C, then ${afterwards.unit} at ${degrees(afterwards.celsius)} °C: ${said}`,
    ],
  ];
}

/** What the dates leave out, and what may be kept in reserve. */
function reserveLines({reserve, agesAlike}: HoldingPlan, when: When): SaidLine[] {
  return [
    ...(agesAlike
      ? [
          [
            'mind',
            'all are taken to be of one age: the spread of uneven age is not in these dates, and would make them come out over more days',
          ] as const,
        ]
      : []),
    ...(reserve === null
      ? []
      : [
          [
            'in case',
            `keep a third of them at ${degrees(reserve.holdC)} °C: half of those out ${when(reserve.p50)}`,
          ] as const,
        ]),
  ];
}

export function holdingPlanAnswer(plan: HoldingPlan, {civil}: Desk) {
  const iso = (at: Instant | null) => (at === null ? null : civil.iso(at));
  return {
    lot: plan.lot,
    adultsBy: plan.adultsBy,
    share: plan.share,
    possible: plan.possible,
    holdC: plan.holdC,
    by: plan.byInstant === undefined ? null : iso(plan.byInstant),
    at: iso(plan.at),
    p05: iso(plan.spread?.p05 ?? null),
    p50: iso(plan.spread?.p50 ?? null),
    p95: iso(plan.spread?.p95 ?? null),
    earliest: iso(plan.earliest),
    latest: iso(plan.latest),
    asItIs: iso(plan.asItIs),
    limits: {lowC: plan.limits.low, highC: plan.limits.high, from: plan.limits.from},
    units: plan.units.map(({unit, from, expectedC, at, p50, judgement}) => ({
      unit,
      expectedC,
      p50: iso(p50),
      at: iso(at),
      from: civil.iso(from),
      judgement,
    })),
    mix: plan.mix === null ? null : {...plan.mix, at: iso(plan.mix.at), p50: iso(plan.mix.p50)},
    reserve: plan.reserve === null ? null : {holdC: plan.reserve.holdC, p50: iso(plan.reserve.p50)},
    agesAlike: plan.agesAlike,
    unfit: plan.unfit,
  };
}

function shareWords(share: number): string {
  return share === 0.5 ? 'half' : `${Math.round(share * 100)} %`;
}

function degrees(celsius: number): string {
  return String(Math.round(celsius * 10) / 10);
}
