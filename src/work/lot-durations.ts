// Days that the room's own lots took over their stages, at the mean temperatures they lived at.
import {stageDurations} from '../development/stage-durations.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {isHidden} from '../records/fold-lots.ts';
import {Refusal} from '../records/refusal.ts';
import type {Stage} from '../records/stage.ts';
import type {Lot} from '../records/state.ts';
import {degreeDay} from '../thermal/degree-day.ts';
import {doseBetween} from '../thermal/dose.ts';
import {seenInDays} from './cases.ts';
import {coursesOf} from './courses.ts';
import {type Desk, openDesk} from './desk.ts';
import type {Session} from './session.ts';

export interface LotDuration {
  readonly lot: string;
  readonly stage: Stage;
  readonly temperature: number;
  readonly days: number;
  /** How many animals there were. */
  readonly n: number;
  /** The instants of entering and leaving lie so far between looks, together. */
  readonly looseDays: number;
  /** The coldest and the warmest it was. */
  readonly lowC: number;
  readonly highC: number;
}

export interface LotDurations {
  readonly durations: readonly LotDuration[];
  /** Why lots gave nothing, a sentence each without its stop. */
  readonly passedOver: readonly string[];
}

/** A stage of which more than this share was not read, nor filled, says nothing of temperature. */
const UNKNOWN_SHARE = 0.1;

/**
 * @param words codes of lots, or of profiles that lots hold as their heaviest candidate; none: every lot
 * @throws Refusal where a word is neither
 */
export async function lotDurations(session: Session, words: readonly string[]): Promise<LotDurations> {
  const desk = await openDesk(session, 'all');
  const durations: LotDuration[] = [];
  const passedOver: string[] = [];
  for (const lot of lotsNamed(words, desk)) {
    const why = whyNot(lot);
    const found = why === undefined ? await durationsOf(lot, desk) : [];
    durations.push(...found);
    if (why !== undefined) passedOver.push(`${lot.code}: ${why}`);
    else if (found.length === 0) passedOver.push(`${lot.code}: no stage was seen from beginning to end`);
  }
  return {durations, passedOver};
}

function lotsNamed(words: readonly string[], {state}: Desk): Lot[] {
  const lots = [...state.lots.values()];
  if (words.length === 0) return lots;
  return words.flatMap(word => {
    const lot = state.lots.get(word);
    if (lot !== undefined) return [lot];
    const holding = lots.filter(({candidates}) =>
      candidates.some(
        ({profile, weight}) => profile === word && candidates.every(other => other.weight <= weight),
      ),
    );
    if (holding.length === 0)
      throw new Refusal(
        `there is no lot "${word}", and no lot whose likeliest candidate it is`,
        'lots',
        'teneral list lots --all shows the lots there are.',
      );
    return holding;
  });
}

function whyNot(lot: Lot): string | undefined {
  if (isHidden(lot)) return 'its animals were never counted';
  if (lot.mergedInto !== undefined || lot.tally.mergedIn > 0) return 'it was merged with another';
  return undefined;
}

async function durationsOf(lot: Lot, desk: Desk): Promise<LotDuration[]> {
  const inDays = (at: number) => at / MS_PER_DAY;
  const cohorts = lot.cohorts.map(({at, ...cohort}) => ({...cohort, atDays: inDays(at)}));
  const durations = stageDurations(cohorts, lot.sightings.map(seenInDays));
  if (durations.length === 0) return [];
  const fromDays = Math.min(...durations.map(each => each.fromDays));
  const toDays = Math.max(...durations.map(each => each.toDays));
  const course = await coursesOf(desk, fromDays)(lot.stays, {
    fromDays,
    nowDays: Math.max(inDays(desk.now), toDays),
    toDays,
  });
  return durations.flatMap(({stage, days, looseDays, animals, ...span}) => {
    const {dose, coveredDays} = doseBetween(course, ABOVE_COLD, span.fromDays, span.toDays);
    if (coveredDays < (1 - UNKNOWN_SHARE) * days) return [];
    const within = course.temperatureC.filter(
      (temperature, i) =>
        !Number.isNaN(temperature) && course.atDays[i]! >= span.fromDays && course.atDays[i]! <= span.toDays,
    );
    const temperature = COLD_C + dose / coveredDays;
    return [
      {
        lot: lot.code,
        stage,
        temperature,
        days,
        n: animals,
        looseDays,
        lowC: within.reduce((low, each) => Math.min(low, each), temperature),
        highC: within.reduce((high, each) => Math.max(high, each), temperature),
      },
    ];
  });
}

/** Degree-days above a temperature that it never was, over the days, are the mean above it. */
const COLD_C = -100;
const ABOVE_COLD = degreeDay({kind: 'degree-day', lower: COLD_C, degreeDays: 1});
