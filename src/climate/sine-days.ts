// A minimum and a maximum drawn as a course: a sine, coolest at 06:00 and warmest at 15:00 local time.
import type {Civil} from '../records/civil.ts';
import {timesOfDay} from './civil-times.ts';
import type {Span} from './part.ts';

const COOLEST = '06:00';
const WARMEST = '15:00';
/** Straight lines between half-hours stay within 0.4 % of the amplitude of the sine. */
const STEPS_PER_DAY = 48;

/**
 * Nodes of the sine that has these extremes every day of a span, its ends included: half a wave from each coolest
 * hour to the next warmest one, and back.
 */
export function sineDays(
  civil: Civil,
  {fromDays, toDays}: Span,
  minimum: number,
  maximum: number,
): {readonly atDays: number[]; readonly temperatureC: number[]} {
  const span = {fromDays, toDays};
  const turns = [
    ...timesOfDay(civil, COOLEST, span).map(at => ({at, temperature: minimum})),
    ...timesOfDay(civil, WARMEST, span).map(at => ({at, temperature: maximum})),
  ].sort((a, b) => a.at - b.at);

  const atDays: number[] = [];
  const temperatureC: number[] = [];
  for (let i = 1; i < turns.length; i++) {
    const [left, right] = [turns[i - 1]!, turns[i]!];
    const begin = Math.max(left.at, fromDays);
    const end = Math.min(right.at, toDays);
    if (end <= begin) continue;
    const steps = Math.ceil((end - begin) * STEPS_PER_DAY - 1e-6);
    for (let step = atDays.length === 0 ? 0 : 1; step <= steps; step++) {
      const at = step === steps ? end : begin + ((end - begin) * step) / steps;
      const wave = (1 - Math.cos((Math.PI * (at - left.at)) / (right.at - left.at))) / 2;
      atDays.push(at);
      temperatureC.push(left.temperature + (right.temperature - left.temperature) * wave);
    }
  }
  return {atDays, temperatureC};
}
