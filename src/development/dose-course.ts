// The dose of one rate model along a temperature course, ready to be asked over and over.
import type {Course} from '../climate/course.ts';
import {doseCourse} from '../thermal/dose.ts';
import type {RateModel} from '../thermal/rate.ts';
import {type RateModelSpec, rateModel} from '../thermal/rate-model.ts';
import {type FutureDoses, futureDosesOf, meanDoseAhead} from './future-doses.ts';

/** What a lot lives in. */
export type Temperatures = Pick<Course, 'atDays' | 'temperatureC' | 'futures'>;

/** Within an hour the dose is taken to run straight. */
const NODES_PER_DAY = 24;

/** The dose since the course began, at every hour. */
export interface DoseCourse {
  readonly fromDays: number;
  readonly dose: Float64Array;
  /** What comes is not one course but many: from where they begin, `dose` is their mean. */
  readonly ahead?: FutureDoses;
}

/**
 * The dose of a rate model along a course. Lots of one unit ask for the same ones, so they are kept as long as the
 * course is. Where the temperature is unknown nothing is added: ask `knownUntil` first.
 */
export function doseCourseOf(course: Temperatures, spec: RateModelSpec): DoseCourse {
  const kept = keptFor(course);
  const name = JSON.stringify(spec);
  let made = kept.get(name);
  if (made === undefined) {
    made = doseAlong(course, rateModel(spec));
    kept.set(name, made);
  }
  return made;
}

function doseAlong(course: Temperatures, model: RateModel): DoseCourse {
  const {atDays, futures} = course;
  const fromDays = atDays[0] ?? 0;
  const hours = Math.ceil(((atDays[atDays.length - 1] ?? fromDays) - fromDays) * NODES_PER_DAY);
  // Past this hour the futures tell; up to it, with it, the course itself.
  const known = futures === undefined ? hours : hourAfter(futures.fromDays, fromDays, hours);
  const nodes = new Float64Array(known + 1);
  for (let hour = 0; hour <= known; hour++) nodes[hour] = fromDays + hour / NODES_PER_DAY;
  const dose = doseCourse(course, model, nodes);
  return futures === undefined ? {fromDays, dose} : throughFutures(fromDays, dose, hours, futures, model);
}

function hourAfter(atDays: number, fromDays: number, last: number): number {
  return Math.min(last, Math.max(0, Math.ceil((atDays - fromDays) * NODES_PER_DAY)));
}

function throughFutures(
  fromDays: number,
  known: Float64Array,
  hours: number,
  futures: NonNullable<Temperatures['futures']>,
  model: RateModel,
): DoseCourse {
  const ahead = futureDosesOf(futures, model);
  const mean = meanDoseAhead(ahead);
  const before = doseAt({fromDays, dose: known}, futures.fromDays);
  const dose = new Float64Array(hours + 1);
  dose.set(known);
  for (let node = hourAfter(futures.fromDays, fromDays, hours); node < dose.length; node++) {
    const position = node - (futures.fromDays - fromDays) * NODES_PER_DAY;
    const hour = Math.min(mean.length - 2, Math.floor(position));
    dose[node] = before + mean[hour]! + (position - hour) * (mean[hour + 1]! - mean[hour]!);
  }
  return {fromDays, dose, ahead};
}

/** The dose up to an instant; before the course begins 0, after its end what it came to. */
export function doseAt({fromDays, dose}: DoseCourse, atDays: number): number {
  const position = (atDays - fromDays) * NODES_PER_DAY;
  if (position <= 0) return 0;
  const node = Math.floor(position);
  if (node >= dose.length - 1) return dose[dose.length - 1]!;
  return dose[node]! + (position - node) * (dose[node + 1]! - dose[node]!);
}

/** The instant at which a dose is reached; past the end of the course Infinity. */
export function reachedAt({fromDays, dose}: DoseCourse, wanted: number): number {
  if (wanted <= 0) return fromDays;
  const node = firstNodeReaching(dose, wanted);
  if (node === dose.length) return Number.POSITIVE_INFINITY;
  if (node === 0) return fromDays;
  const before = dose[node - 1]!;
  return fromDays + (node - 1 + (wanted - before) / (dose[node]! - before)) / NODES_PER_DAY;
}

/**
 * From doses of one course, in rising order, to those of another at the same instants, in place; Infinity past the end.
 * Both began at the same instant.
 */
export function carry(from: DoseCourse, to: DoseCourse, doses: Float64Array, count: number) {
  const {dose} = from;
  const last = dose.length - 1;
  let node = firstNodeReaching(dose, doses[0]!);
  for (let i = 0; i < count; i++) {
    const wanted = doses[i]!;
    while (node <= last && dose[node]! < wanted) node++;
    if (node > last) doses[i] = Number.POSITIVE_INFINITY;
    else if (node === 0) doses[i] = 0;
    else {
      const before = dose[node - 1]!;
      const along = (wanted - before) / (dose[node]! - before);
      doses[i] = to.dose[node - 1]! + along * (to.dose[node]! - to.dose[node - 1]!);
    }
  }
}

/** The first instant from the given one on at which the temperature is not known; Infinity where it always is. */
export function knownUntil({atDays, temperatureC}: Temperatures, fromDays: number): number {
  const end = atDays[atDays.length - 1] ?? fromDays;
  if (!(atDays[0]! <= fromDays)) return fromDays;
  for (let i = 0; i < atDays.length; i++)
    if (Number.isNaN(temperatureC[i]!) && (atDays[i + 1] ?? end) > fromDays)
      return Math.max(fromDays, i > 0 && !Number.isNaN(temperatureC[i - 1]!) ? atDays[i - 1]! : atDays[i]!);
  return Number.POSITIVE_INFINITY;
}

function firstNodeReaching(dose: Float64Array, wanted: number): number {
  let low = 0;
  let high = dose.length;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if (dose[middle]! >= wanted) high = middle;
    else low = middle + 1;
  }
  return low;
}

const courses = new WeakMap<Float64Array, Map<string, DoseCourse>>();

function keptFor({temperatureC}: Temperatures): Map<string, DoseCourse> {
  let kept = courses.get(temperatureC);
  if (kept === undefined) {
    kept = new Map();
    courses.set(temperatureC, kept);
  }
  return kept;
}
