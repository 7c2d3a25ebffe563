// "Can this wait until Monday?": tasks with how long they are safe, and lots with who may come out meanwhile.
import {openTimeOf} from '../care/calendar.ts';
import {holdHoursOf} from '../care/hold-time.ts';
import {jobsOf} from '../care/jobs.ts';
import type {Visit} from '../care/visits.ts';
import {nextAfterClosing, visitsWhileWaiting, type WaitingTask, waitingTasks} from '../care/waiting.ts';
import {readDay, readInstant} from '../exchange/instants.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {type Lot, openLots} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {candidateProfiles} from './expectations.ts';
import {outlooker} from './outlook.ts';
import {careInput} from './today.ts';

export interface WaitingLot {
  readonly lot: string;
  readonly unit: string;
  readonly holdHours: number;
  /** That any adult is out by then, unseen; null where nobody knows how many animals there are. */
  readonly probability: number | null;
  /** Adults expected out by then, of those alive now; null likewise. */
  readonly expected: number | null;
  /** That any has then waited longer than its kind bears. */
  readonly probabilityOverHold: number | null;
  readonly expectedOverHold: number | null;
  readonly canWait: boolean;
}

export interface Waiting {
  readonly until: Instant;
  /** Everything can. */
  readonly canWait: boolean;
  readonly tasks: readonly WaitingTask[];
  /** Lots of which an adult may be out by then, the most pressing first. */
  readonly lots: readonly WaitingLot[];
  /** What it costs where it cannot: the visits on closed time until then. */
  readonly visits: readonly Visit[];
}

/** So many adults, expected, may wait longer than their kind bears. As where looks are planned. */
const WAITING_ADULTS = 0.05;
/** Within days the futures of a course differ little: the one expected course will do, and is quick. */
const FUTURES = 0;
/** Less than this is not worth a line. */
const WORTH_NAMING = 0.005;

/**
 * @param until the round that is waited for; default: the first after the next closed day
 * @param about codes of units or lots; default: the whole room
 */
export async function waiting(desk: Desk, until?: string, about: readonly string[] = []): Promise<Waiting> {
  const input = await careInput(desk);
  const at =
    until === undefined
      ? nextAfterClosing(openTimeOf(input.state.calendar, input.civil), input)
      : instantOf(until, desk);
  if (at === null || at <= desk.now)
    throw new Refusal('there is no later round to wait for', '--until', 'Name a later day or instant.');
  refuseUnknown(about, desk);
  const isAsked = (...codes: (string | null)[]) =>
    about.length === 0 || codes.some(code => code !== null && about.includes(code));
  const tasks = waitingTasks(input, at).filter(({unit, lot}) => isAsked(unit, lot));
  const emergence = await waitingLots(
    desk,
    at,
    openLots(desk.state).filter(
      lot =>
        isAsked(lot.code, lot.stays.at(-1)?.unit ?? null) && isNear(input.emergence.get(lot.code)?.p05, at),
    ),
  );
  const canWait = [...tasks, ...emergence].every(each => each.canWait);
  const asked = jobsOf(input, openTimeOf(input.state.calendar, input.civil)).filter(({unit, lots: served}) =>
    isAsked(unit.code, ...served.map(({code}) => code)),
  );
  return {
    ...{until: at, canWait, tasks, lots: emergence},
    visits: canWait ? [] : visitsWhileWaiting(asked, at, input),
  };
}

/** A day is meant as its first round, or its beginning where it has none. */
function instantOf(text: string, {civil, state}: Desk): Instant {
  const day = readDay(text);
  if (day !== undefined)
    return openTimeOf(state.calendar, civil).openings(day)[0]?.from ?? civil.at(day, '00:00');
  const at = readInstant(text, civil);
  if (at === undefined)
    throw new Refusal(
      `"${text}" is no day and no instant`,
      '--until',
      'Write it like 2026-06-15 or 2026-06-15T08:00.',
    );
  return at;
}

function refuseUnknown(about: readonly string[], {state}: Desk): void {
  for (const code of about)
    if (!state.lots.has(code) && !state.units.has(code))
      throw new Refusal(
        `there is no lot and no unit "${code}"`,
        'wait',
        'teneral list lots and teneral list units show them.',
      );
}

/** Long before one in twenty is out there is next to no chance of an adult. */
const FAR_DAYS = 14;

function isNear(p05: Instant | null | undefined, until: Instant): boolean {
  return p05 !== undefined && p05 !== null && p05 - FAR_DAYS * MS_PER_DAY < until;
}

async function waitingLots(desk: Desk, until: Instant, lots: readonly Lot[]): Promise<WaitingLot[]> {
  if (lots.length === 0) return [];
  const profiles = await candidateProfiles(desk);
  const outlookOf = outlooker(desk, lots, {futures: FUTURES});
  const all = await Promise.all(
    lots.map(async (lot): Promise<WaitingLot> => {
      const holdHours = holdHoursOf(lot, desk.state, profiles);
      const asked = {outAtDays: [until, until - holdHours * MS_PER_HOUR].map(at => at / MS_PER_DAY)};
      const {forecast, unit} = await outlookOf(lot, {asked});
      const [out, over] = forecast.outBy;
      const adults = adultsOf(forecast);
      const times = (chance: number | undefined) => (adults === null ? null : adults * (chance ?? 0));
      const overHold = times(over?.animal);
      return {
        lot: lot.code,
        unit,
        holdHours,
        probability: out?.first ?? null,
        expected: times(out?.animal),
        probabilityOverHold: over?.first ?? null,
        expectedOverHold: overHold,
        canWait: (overHold ?? over?.animal ?? 0) <= WAITING_ADULTS,
      };
    }),
  );
  return all
    .filter(
      ({probability, expected, canWait}) =>
        !canWait || Math.max(probability ?? 0, expected ?? 0) >= WORTH_NAMING,
    )
    .sort((a, b) => (b.expectedOverHold ?? 1) - (a.expectedOverHold ?? 1) || (a.lot < b.lot ? -1 : 1));
}

/** Animals alive that are expected to become adults; null where nobody counted them. */
function adultsOf({
  alive,
  perDay,
}: {
  alive: number | null;
  perDay: readonly {probability: number; expected: number | null}[];
}): number | null {
  const [first] = perDay;
  return alive === null ? null : first === undefined ? alive : (first.expected ?? 0) / first.probability;
}
