// What looking back says, in words and as `teneral review` answers it.
import {dayWords} from '../exchange/time-words.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import type {Review, SkillWhen, When} from './review.ts';
import type {SaidLine, SaidLines} from './said-lines.ts';

const WHEN_WORDS: Readonly<Record<When, string>> = {
  start: 'at start',
  half: 'half way',
  'three-days': '3 d before',
};

export function reviewWords(
  {lots, forecasts, profiles, replayed, passedOver}: Review,
  {civil, now, state}: Desk,
): SaidLines {
  if (replayed.length === 0)
    return {
      title: `looking back · ${lots === 0 ? 'no lot is finished' : `${lots} finished, none with a forecast`}`,
      lines: [
        ['', 'A lot counts when it is closed and adults of it came out.'],
        ...passedOverLines(passedOver),
      ],
    };
  const day = (days: number) => dayWords(civil.dayOf(days * MS_PER_DAY), civil, now);
  return {
    title: `looking back · ${lots} finished ${lots === 1 ? 'lot' : 'lots'} · when half of the adults were out`,
    lines: [
      ...skillLines(forecasts),
      ...profiles.flatMap(({profile, lots: n, forecasts: own, experience}): SaidLine[] => [
        ['', ''],
        ['profile', `${profile}, ${n} ${n === 1 ? 'lot' : 'lots'}`],
        ...skillLines(own),
        ...experienceLines(experience),
      ]),
      ...(state.settings.finishedLots === 'left-out'
        ? [['left out', 'As the room is set, the next lots begin as published all the same.'] as const]
        : []),
      ['', ''],
      ...replayed.map(
        ({lot, when, p50, outcome}): SaidLine => [
          lot,
          `${WHEN_WORDS[when]}: said ${day(p50)}, was ${day(outcome)}, ${error(p50 - outcome)}`,
        ],
      ),
      ...passedOverLines(passedOver),
    ],
  };
}

/** How many forecasts say nothing of how good they were, and why. */
function passedOverLines(passedOver: Review['passedOver']): SaidLine[] {
  if (passedOver.length === 0) return [];
  const whys = [...new Set(passedOver.map(({why}) => why))];
  return [
    ['', ''],
    ...whys.map((why, i): SaidLine => {
      const of = passedOver
        .filter(each => each.why === why)
        .map(({lot, when}) => (when === null ? lot : `${lot} ${WHEN_WORDS[when]}`));
      return [i === 0 ? 'not judged' : '', `${of.length}: ${why} (${of.join(', ')})`];
    }),
  ];
}

function skillLines(forecasts: readonly SkillWhen[]): SaidLine[] {
  return forecasts.flatMap(({when, n, biasDays, maeDays, held80}): SaidLine[] =>
    biasDays === null || maeDays === null || held80 === null
      ? []
      : [
          [
            WHEN_WORDS[when],
            `${error(biasDays) === RIGHT ? 'right' : error(biasDays)} on average, off by ${maeDays.toFixed(1)} d; the window held ${Math.round(held80 * n)} of ${n}`,
          ],
        ],
  );
}

/** What the next lot begins from. */
export function experienceLines({pace, survival}: Review['profiles'][number]['experience']): SaidLine[] {
  const lines: SaidLine[] = [];
  if (pace !== null)
    lines.push([
      'own pace',
      `${Math.exp(pace.lnMean).toFixed(2)} of the published, from ${pace.lots} ${pace.lots === 1 ? 'lot' : 'lots'}; the next lot begins from it`,
    ]);
  if (survival !== null)
    lines.push([
      'survival',
      `${Math.round(survival.share * 100)} %: ${survival.emerged} of ${survival.came} emerged here`,
    ]);
  return lines;
}

const RIGHT = 'right on the day';

function error(days: number): string {
  if (Math.abs(days) < 0.05) return RIGHT;
  return `${Math.abs(days).toFixed(1)} d too ${days > 0 ? 'late' : 'early'}`;
}

export function reviewAnswer(
  {lots, forecasts, profiles, replayed, passedOver}: Review,
  {civil, state}: Desk,
) {
  const iso = (days: number | null) => (days === null ? null : civil.iso(days * MS_PER_DAY));
  return {
    lots,
    forecasts,
    finishedLots: state.settings.finishedLots ?? 'used',
    profiles: profiles.map(({experience: {pace, survival}, ...one}) => ({
      ...one,
      pace:
        pace === null
          ? null
          : {p50: Math.exp(pace.lnMean), lnMean: pace.lnMean, lnSd: pace.sd, lots: pace.lots},
      survival,
    })),
    replayed: replayed.map(({lot, profile, when, asOf, p10, p50, p90, outcome}) => ({
      lot,
      profile,
      when,
      asOf: civil.iso(asOf),
      half: {p10: iso(p10), p50: iso(p50), p90: iso(p90)},
      outcome: iso(outcome),
    })),
    passedOver,
  };
}
