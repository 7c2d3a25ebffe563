// How many degree-days the animals have behind them in the stage most of them are in.
import type {LotForecast} from './answer.ts';
import {type Measure, massUpTo} from './measure.ts';
import type {PaceLine} from './scenario.ts';
import {later, sharesIn} from './standing.ts';
import {ownDose} from './tempo.ts';

/**
 * Of the weightiest member at its middle pace: what the mean animal needs less what those now in the stage still
 * need on average. Null where the stage does not count in degree-days.
 */
export function degreeDayStanding(lines: readonly PaceLine[], nowDays: number): LotForecast['degreeDays'] {
  const point = weightiest(lines);
  if (point === undefined) return null;
  const {tempo, classes} = point;
  const {stages} = tempo.chain;
  const here = classes
    .filter(({standing}) => standing.atDays <= nowDays)
    .map(({count, standing}) => ({count, standing: later(tempo, standing, nowDays)}));
  const shares = stages.map(() => 0);
  for (const {count, standing} of here)
    sharesIn(tempo, standing).forEach((share, stage) => {
      shares[stage] = shares[stage]! + count * share;
    });
  const stage = shares.indexOf(Math.max(...shares));
  const {name, lowerC, required} = stages[stage]!;
  if (lowerC === null || shares[stage]! <= 0) return null;

  const now = ownDose(tempo, stage, nowDays);
  let mass = 0;
  let remaining = 0;
  for (const {count, standing} of here) {
    const leaving = standing.leaving[stage];
    if (!leaving) continue;
    const [beyond, dose] = massAndDoseBeyond(leaving, now);
    mass += count * beyond;
    remaining += count * dose;
  }
  const accumulated = mass === 0 ? 0 : required * Math.min(1, Math.max(0, 1 - remaining / mass));
  return {stage: name, accumulated, required, lower: lowerC};
}

function weightiest(lines: readonly PaceLine[]) {
  const points = lines.flatMap(line => line.points);
  return points.length === 0 ? undefined : points.reduce((a, b) => (b.weight > a.weight ? b : a));
}

/** The mass beyond a dose, and what it still needs from there. */
function massAndDoseBeyond(measure: Measure, from: number): readonly [mass: number, dose: number] {
  let mass = 0;
  let dose = 0;
  for (let i = 0; i < measure.length; i++) {
    const low = Math.max(from, (measure.first + i - 0.5) * measure.step);
    const high = (measure.first + i + 0.5) * measure.step;
    if (high <= from) continue;
    const inside = massUpTo(measure, high) - massUpTo(measure, low);
    mass += inside;
    dose += inside * ((low + high) / 2 - from);
  }
  return [mass, dose];
}
