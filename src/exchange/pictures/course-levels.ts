// The levels that matter to a course: what the unit is set to, and between which temperatures its lots develop.
import type {Unit} from '../../records/state.ts';
import type {Level} from './value-scale.ts';

interface Threshold {
  readonly lot: string;
  readonly stage: string;
  readonly lowerC: number | null;
  readonly upperC: number | null;
}

export function courseLevels({setPoints}: Unit, thresholds: readonly Threshold[]): Level[] {
  return [...setPointLevels(setPoints), ...thresholdLevels(thresholds)];
}

function setPointLevels(setPoints: Unit['setPoints']): Level[] {
  if (setPoints === undefined || 'ambient' in setPoints) return [];
  if ('constant' in setPoints) return [{valueC: setPoints.constant, name: 'set to'}];
  return [
    {valueC: setPoints.day, name: 'set by day'},
    {valueC: setPoints.night, name: 'set by night'},
  ];
}

/** Lots whose stage has the same threshold share a name: "26-016-A, 26-030-A pupa from". */
function thresholdLevels(thresholds: readonly Threshold[]): Level[] {
  const lots = new Map<string, {readonly valueC: number; readonly what: string; readonly codes: string[]}>();
  const add = (code: string, what: string, valueC: number) => {
    const key = `${what} ${valueC}`;
    const level = lots.get(key) ?? {valueC, what, codes: []};
    level.codes.push(code);
    lots.set(key, level);
  };
  for (const {lot, stage, lowerC, upperC} of thresholds) {
    if (lowerC !== null) add(lot, `${stage} from`, lowerC);
    if (upperC !== null) add(lot, `${stage} up to`, upperC);
  }
  return [...lots.values()].map(({valueC, what, codes}) => ({valueC, name: `${codes.join(', ')} ${what}`}));
}
