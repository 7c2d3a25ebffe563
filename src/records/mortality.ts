// Mortality within a stage, as life tables by stage have it.

export interface Mortality {
  /** Share that died of those at risk, between 0 and 1. */
  readonly died: number;
  /** Share that lived through the stage. */
  readonly survived: number;
  /** −ln of the share that survived. k-values of successive causes or stages add up; divide by ln 10 for common logarithms. */
  readonly k: number;
}

/**
 * Mortality of a stage. Those taken out alive were at risk for half of it on the average.
 * Stage-specific life table with k = −ln(s): A. A. Sharov, Quantitative Population Ecology, lecture 6.2 (stage-dependent
 * life tables), after Campbell 1981 (seen). Half the exposure of those withdrawn: the actuarial method of Cutler &
 * Ederer 1958, Journal of Chronic Diseases 8, 699–712 (from memory).
 * @param entered how many entered the stage
 * @param died how many of them died in it
 * @param withdrawn how many of them were taken out alive, or are still in it
 * @returns undefined where nobody was at risk
 */
export function mortalityOf(entered: number, died: number, withdrawn = 0): Mortality | undefined {
  const atRisk = entered - withdrawn / 2;
  if (atRisk <= 0) return undefined;
  const share = Math.min(1, died / atRisk);
  return {died: share, survived: 1 - share, k: -Math.log1p(-share)};
}
