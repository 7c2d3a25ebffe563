// What founders have left of the stage they were found in: W · (1 − u), u even between two progresses.
import {dosePoints, stepOf} from './kernel.ts';
import {keptMeasure, type Measure} from './measure.ts';
import {layEvenly, type Ramps, raise} from './ramps.ts';
import {remembered} from './remembered.ts';
import type {Spread} from './spread.ts';

/** Which part of its stage a founder may be in: even between two shares of it, from 0 (just moulted) to 1. */
export type Progress = readonly [from: number, to: number];

/** A dozen points of W within each standard deviation make a smooth table. */
const POINTS_PER_SD = 12;

/**
 * The measure of W · (1 − u), of mass 1, in cells from dose 0 on, as fine as what remains is short. For each point of
 * W the remainder is even between W · (1 − to) and W · (1 − from). Masses that lie evenly in cells add step²/6 to
 * the variance, which is taken off W.
 */
export const remainingOf = remembered(
  2000,
  ({spread, progress: [from, to]}: {readonly spread: Spread; readonly progress: Progress}): Measure => {
    const most = 1 - from;
    const least = 1 - to;
    const step = stepOf(spread) * Math.max(most, 1e-3);
    const meanSquare = (most * most + most * least + least * least) / 3;
    const fine = spread.cv === 0 ? step : spread.cv / POINTS_PER_SD;
    const points = dosePoints(spread, fine, meanSquare === 0 ? 0 : (step * step) / (6 * meanSquare));
    const highest = (points.from + points.mass.length * fine) * most;

    const ramps: Ramps = {from: 0, step, nodes: new Float64Array(3 + Math.ceil(highest / step))};
    points.mass.forEach((share, i) => {
      const low = Math.max(0, points.from + (i - 0.5) * fine);
      const high = points.from + (i + 0.5) * fine;
      const middle = (low + high) / 2;
      const [begin, end] = least < most ? [middle * least, middle * most] : [low * most, high * most];
      // Laid at least a step wide, nothing may come to lie before the start.
      const lift = Math.max(0, (step - begin - end) / 2);
      layEvenly(ramps, begin + lift, end + lift, share);
    });
    raise(ramps);
    const mass = new Float64Array(ramps.nodes.length - 1);
    for (let i = 0; i < mass.length; i++) mass[i] = ramps.nodes[i + 1]! - ramps.nodes[i]!;
    return keptMeasure(step, 0.5, mass);
  },
  ({spread, progress}) => `${spread.family} ${spread.cv} ${progress[0]} ${progress[1]}`,
);
