// Why an animal is not out long after its time: it is late, it rests, or it is dead.
import {massUpTo} from './measure.ts';
import type {SeenAnimals} from './request.ts';
import {type PaceLine, type PacePoint, restingAmong} from './scenario.ts';
import {emergenceOf} from './standing.ts';
import {ownDose} from './tempo.ts';

/** Chances of one animal that is still in there; they sum to one. */
export interface NotOut {
  readonly late: number;
  readonly diapause: number;
  readonly dead: number;
}

export interface Waiting {
  /** As expected from the start, before anybody looked. */
  readonly lines: readonly PaceLine[];
  readonly sightings: readonly SeenAnimals[];
  /** The last look at which they were not out. */
  readonly lookDays: number;
  /** How many are left; null where nobody knows. */
  readonly left: number | null;
  /** That an animal rests, where the lines take it that none does; null: as the lines say. */
  readonly rests: number | null;
  /** That one dies before it emerges, as far as was known from the start. */
  readonly dead: number;
}

/**
 * Each animal develops, rests or is dead, whatever the others are; those that develop share the pace and kind of the
 * lot. So with F the chance to be out by an instant at one pace, a lot of which some came out between two looks and
 * n did not is as likely as ∏ (1 − d − m)(F(found) − F(before)) · [(1 − d − m)(1 − F(look)) + d + m]ⁿ.
 */
export function whyNotOut({lines, sightings, lookDays, left, rests, dead: m}: Waiting): NotOut {
  const out = left === null ? [] : sightings.flatMap(seen => (seen.kind === 'emergence' ? [seen] : []));
  const points = lines.flatMap(({points}) => points).filter(({weight}) => weight > 0);
  const told = points.map(point => {
    const d = rests ?? restingAmong(point.classes);
    const never = Math.min(1, d + m);
    const shareOut = sharesOut(point);
    const inside = 1 - shareOut(lookDays);
    const notOut = (1 - never) * inside + never;
    let lnChance = Math.log(point.weight) + (left ?? 1) * Math.log(Math.max(LEAST, notOut));
    for (const {sinceDays, atDays, count} of out) {
      const share = shareOut(atDays) - shareOut(sinceDays);
      lnChance += count * Math.log(Math.max(LEAST, (1 - never) * share));
    }
    const late = notOut === 0 || never === 0 ? 1 : ((1 - never) * inside) / notOut;
    return {lnChance, late, diapause: never === 0 ? 0 : ((1 - late) * d) / (d + m)};
  });
  const best = Math.max(...told.map(({lnChance}) => lnChance));
  const weights = told.map(({lnChance}) => Math.exp(lnChance - best));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = (of: (one: (typeof told)[number]) => number) =>
    told.reduce((sum, one, i) => sum + weights[i]! * of(one), 0) / whole;
  const late = mean(one => one.late);
  const diapause = mean(one => one.diapause);
  return {late, diapause, dead: Math.max(0, 1 - late - diapause)};
}

/** As chances below it are, in learning. */
const LEAST = 1e-9;

/** Of the animals that go on, the share that is out by an instant at one point of the unknowns. */
function sharesOut({tempo, classes}: PacePoint): (atDays: number) => number {
  const last = tempo.chain.stages.length - 1;
  const all = (1 - restingAmong(classes)) * classes.reduce((sum, {count}) => sum + count, 0);
  const leaving = classes.map(({standing}) => emergenceOf(tempo, standing));
  return atDays => {
    const dose = ownDose(tempo, last, atDays);
    const out = classes.reduce((sum, {count}, i) => {
      const measure = leaving[i] ?? null;
      return measure === null ? sum : sum + count * massUpTo(measure, dose);
    }, 0);
    return all === 0 ? 0 : Math.min(1, out / all);
  };
}
