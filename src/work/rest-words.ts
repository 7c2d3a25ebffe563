// Rest and what is not out, in words.
import type {NotOut} from '../development/not-out.ts';
import type {Chill} from '../development/rest.ts';
import {dayWords, instantWords} from '../exchange/time-words.ts';
import {lossesOf} from '../records/balance.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import type {Outlook} from './outlook.ts';
import type {Light, Overdue} from './overdue.ts';
import type {SaidLine} from './said-lines.ts';

const CAUSES = {diapause: 'in diapause', dead: 'dead', late: 'late'} as const;
type Cause = keyof typeof CAUSES;

/** What those left may be, and what speaks for it. */
export interface Explanation {
  readonly cause: Cause;
  readonly chance: number;
  readonly why: readonly string[];
}

/** The likeliest first; where one is as likely as another, the one that is the costlier mistake. */
function ranked(notOut: NotOut): readonly Cause[] {
  const causes: readonly Cause[] = ['diapause', 'dead', 'late'];
  return causes.toSorted((a, b) => notOut[b] - notOut[a]);
}

/** "in diapause 60 %, dead 28 %, late 12 %", the likeliest first. */
export function notOutWords(notOut: NotOut): string {
  return ranked(notOut)
    .filter(cause => notOut[cause] >= 0.005)
    .map(cause => `${CAUSES[cause]} ${percent(notOut[cause])}`)
    .join(', ');
}

/** Of a lot that is late; none of any other. */
export function explanationsOf(outlook: Outlook, desk: Desk): readonly Explanation[] {
  const {forecast, overdue} = outlook;
  const {notOut} = forecast;
  if (notOut === null || overdue === null) return [];
  return ranked(notOut).map(cause => ({
    cause,
    chance: notOut[cause],
    why: WHY[cause](outlook, overdue, desk),
  }));
}

/** Days at most so long tell many kinds to rest. Common practice, no source. */
const SHORT_DAY_HOURS = 14;

const WHY: Readonly<Record<Cause, (outlook: Outlook, overdue: Overdue, desk: Desk) => readonly string[]>> = {
  diapause({forecast: {rest}}, {light, out}, desk) {
    const {chill} = rest;
    return [
      ...(light === null || light.hours > SHORT_DAY_HOURS ? [] : [lightWords(light, desk)]),
      ...(out?.inTime === true ? [`two groups: ${outWords(out, desk)}`] : []),
      ...(chill === null
        ? []
        : chill.gathered < 1
          ? ['no cold: they have had none in this room']
          : chill.gathered < chill.required
            ? [`too little cold: ${chillWords(chill, () => '')}`]
            : []),
    ];
  },
  dead({lot}) {
    const {dead = 0} = lossesOf(lot);
    return [
      dead === 0
        ? 'none was found dead so far, and from outside it does not show'
        : `${dead} of this lot were found dead before`,
    ];
  },
  late(_, {out, sum, unread}, desk) {
    return [
      'the threshold or the constant does not fit them',
      ...(sum === null
        ? []
        : [
            `${sum.degreeDays.toFixed(0)} degree-days are ${percent(sum.degreeDays / sum.required)} of what is published`,
          ]),
      ...(out === null
        ? ['none came out yet, as where the figures are wrong for all']
        : out.inTime
          ? [
              `against it: ${out.count} came out when they were to, the last ${dayWords(desk.civil.dayOf(out.lastDays * MS_PER_DAY), desk.civil, desk.now)}`,
            ]
          : ['those that came out did not keep to the figures either']),
      ...(unread < 0.1 ? [] : [`${percent(unread)} of their time was not read: it may have been colder`]),
    ];
  },
};

function lightWords({hours, from, unit, onDays}: Light, {civil, now}: Desk): string {
  const long = `${Math.floor(hours)} h${hours % 1 < 1 / 120 ? '' : ` ${Math.round((hours % 1) * 60)} min`}`;
  return from === 'lamp' || onDays === null
    ? `short days: ${long} of light in ${unit}`
    : `autumn light: the day was ${long} long where they were collected, ${dayWords(civil.dayOf(onDays * MS_PER_DAY), civil, now)}`;
}

function outWords({count, lastDays, degreeDaysSince}: NonNullable<Overdue['out']>, {now}: Desk): string {
  const days = Math.round(now / MS_PER_DAY - lastDays);
  const ago =
    degreeDaysSince === null ? `${days} days` : `${degreeDaysSince.toFixed(0)} degree-days (${days} days)`;
  return `${count} came out in their time, the last ${ago} ago, and none since`;
}

/** What tells them apart, as keepers do it. Common practice, no source. */
export function testsFor(left: number | null): readonly string[] {
  const some = left === null ? 'some' : String(Math.min(5, left));
  return [
    `weigh ${some} singly, and again after two weeks: dead ones become light`,
    'bend and touch: what bends and stays bent is dead, what springs back or wriggles is alive',
    'look for parasitoid holes: one with a hole was parasitised; soft, black, leaking or mouldy ones are dead; open none that is firm and clean',
    'wait: late ones still come out; what rests does not change for weeks',
  ];
}

/** What to do meanwhile. Common practice, no source. */
export function actionsFor(left: number | null): readonly string[] {
  const kept = left === null ? 'what is left' : `the ${left}`;
  return [
    'stop the daily looks: a look a week is enough',
    `chill ${kept} at 3 to 5 °C for twelve weeks or more, then warm them; or warm a third as a trial`,
    `throw none away: ${kept} stay alive in the sum until somebody knows better`,
  ];
}

/** What is left, why, how to tell and what to do; nothing of a lot that is not late. */
export function overdueLines(outlook: Outlook, desk: Desk): SaidLine[] {
  const {forecast} = outlook;
  const told = explanationsOf(outlook, desk);
  if (told.length === 0) return [];
  const inMargin = (name: string, texts: readonly string[]) =>
    texts.map((text, i): SaidLine => [i === 0 ? name : '', text]);
  return [
    ...told.map(
      ({cause, chance, why}, i): SaidLine => [
        i === 0 ? 'likeliest' : i === 1 ? 'or else' : 'or',
        `(${i + 1}) ${cause === 'late' ? 'wrong constants, only late' : CAUSES[cause]}, ${chance < 0.005 ? 'under 1 %' : percent(chance)}: ${why.join('; ')}`,
      ],
    ),
    ...inMargin('tell apart', testsFor(forecast.alive)),
    ...inMargin('do', actionsFor(forecast.alive)),
  ];
}

/** "19, 44 degree-days past Wed 25 December 21:00, when 95 % were to be out (265 degree-days so far, 139 % of 190)" */
export function pastWords({forecast: {alive}, overdue}: Outlook, {civil, now}: Desk): string | undefined {
  if (overdue === null || overdue.dueDays === null) return undefined;
  const {dueDays, degreeDaysPast, sum} = overdue;
  const days = `${(now / MS_PER_DAY - dueDays).toFixed(1)} days`;
  const past = degreeDaysPast === null ? days : `${degreeDaysPast.toFixed(0)} degree-days (${days})`;
  const when = instantWords(dueDays * MS_PER_DAY, civil, now);
  const so =
    sum === null
      ? ''
      : `; ${sum.degreeDays.toFixed(0)} degree-days so far, ${percent(sum.degreeDays / sum.required)} of ${sum.required}`;
  return `${alive ?? 'all that are left'}, alive as far as anybody knows, are ${past} past ${when}, when 95 % were to be out${so}`;
}

/** @param when an instant in words; of null, that it is not known */
export function chillWords(
  {belowC, unit, required, gathered, completeDays}: Chill,
  when: (days: number | null) => string,
): string {
  const amount = unit === 'days' ? 'd' : 'degree-days';
  const so = `${Math.round(gathered)} of ${Math.round(required)} ${amount} below ${belowC} °C`;
  if (completeDays === null) return `${so}; never enough at the temperatures expected`;
  return `${so}; ${gathered >= required ? 'enough since' : 'enough'} ${when(completeDays)}`;
}

function percent(share: number): string {
  return `${Math.round(share * 100)} %`;
}
