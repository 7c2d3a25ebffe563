// Whether the animals of a lot were to be out by now, as expected from the start.
import {prospectsOf} from './prospects.ts';
import {type PaceLine, restingAmong} from './scenario.ts';
import {ADULT, stageShares} from './stage-shares.ts';

/** A lot is late where somebody looked when so many of its animals were to be out. Common practice, no source. */
const LATE = 0.95;

/** @param expected as it was from the start, before anybody looked */
export function isLateAt(expected: readonly PaceLine[], lookDays: number): boolean {
  const isDue = (lines: readonly PaceLine[]) => {
    const {[ADULT]: out = 0} = stageShares(lines, prospectsOf(lines, [], [lookDays]), 0);
    return (
      out >= LATE * goingOn(lines) &&
      lines.every(({points}) => points.every(({classes}) => haveJoined(classes, lookDays)))
    );
  };
  // Nearly always not even the fastest would be, and that costs a tenth to know.
  return (
    expected.some(({points, ...line}) => isDue([{...line, points: points.slice(-1)}])) && isDue(expected)
  );
}

/** The share of the animals that does not rest. */
function goingOn(lines: readonly PaceLine[]): number {
  const points = lines.flatMap(line => line.points);
  const whole = points.reduce((sum, {weight}) => sum + weight, 0);
  const resting = points.reduce((sum, {weight, classes}) => sum + weight * restingAmong(classes), 0);
  return 1 - resting / whole;
}

function haveJoined(classes: PaceLine['points'][number]['classes'], lookDays: number): boolean {
  return classes.every(({standing}) => standing.atDays <= lookDays);
}
