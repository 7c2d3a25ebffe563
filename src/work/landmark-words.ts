// Where development begins, is fastest and ends, as people say it.
import {landmarksOf, type RateModelSpec} from '../thermal/rate-model.ts';

/** "nothing below 11.4 °C, fastest at 32.7 °C, nothing above 39.2 °C" */
export function landmarkWords(spec: RateModelSpec): string {
  const {lowerC, optimumC, upperC} = landmarksOf(spec);
  const begins = lowerC === null ? 'no lower threshold' : `nothing below ${celsius(lowerC)}`;
  if (spec.kind === 'degree-day') return `${begins}, ${cutoffWords(spec)}`;
  const fastest = optimumC === null ? 'ever faster' : `fastest at ${celsius(optimumC)}`;
  const ends = upperC === null ? 'no upper limit' : `nothing above ${celsius(upperC)}`;
  return `${begins}, ${fastest}, ${ends}`;
}

function cutoffWords({upper, cutoff}: Extract<RateModelSpec, {kind: 'degree-day'}>): string {
  if (upper === undefined) return 'ever faster';
  switch (cutoff) {
    case 'vertical':
      return `nothing above ${celsius(upper)}`;
    case 'intermediate':
      return `slower again above ${celsius(upper)}`;
    default:
      return `no faster above ${celsius(upper)}`;
  }
}

function celsius(value: number): string {
  return `${value.toFixed(1)} °C`;
}
