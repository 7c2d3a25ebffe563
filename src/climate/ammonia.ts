// Ammonia in water: the share that is un-ionised, and so harms animals.
import {ZERO_C_IN_K} from './saturation.ts';

/**
 * Share of total ammonia that is un-ionised (NH3), 0 to 1, in fresh water of 0 to 50 °C:
 * 1/(1 + 10^(pKa − pH)), pKa = 0.09018 + 2729.92/T. Emerson, Russo, Lund and Thurston 1975, J. Fish. Res. Board
 * Can. 32, 2379–2383.
 */
export function unionisedShare(temperatureC: number, ph: number): number {
  return 1 / (1 + 10 ** (ammoniumPKa(temperatureC) - ph));
}

export function ammoniumPKa(temperatureC: number): number {
  return 0.09018 + 2729.92 / (temperatureC + ZERO_C_IN_K);
}

/**
 * Above so much un-ionised ammonia, mg/L, something must be done: guide value of the European fish-water directive of
 * 1978; lasting harm to fish from 0.03, death of fish larvae from 0.2, all as cited at hbuehrer.ch/Rechner/Ammonia.
 * Insects differ: mussels are harmed sooner, many insects later.
 */
export const UNIONISED_MG_L = {guide: 0.005, harm: 0.03, deadly: 0.2} as const;
