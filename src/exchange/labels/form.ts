// The sizes of what is printed, and of the type on it.
import type {Box} from './fit.ts';

export interface Form extends Box {
  /** Heights to be tried where the text needs more room, the smallest first. */
  readonly tallerMm: readonly number[];
  /** Sizes of type to be tried, the largest first. */
  readonly sizesPt: readonly number[];
  /** Blank between the edge and the text. */
  readonly padMm: number;
}

/**
 * A pinned label. 4 points: Mississippi Entomological Museum Report 2016-01; under 3 points it cannot be read:
 * theskepticalmoth.com, Labelling your specimens. The side between 15 and 20, the height between 6 and 10 mm: from
 * memory; at most 22.2 by 7.9 mm where young people collect: Purdue Extension 401.
 */
export const pinForm: Form = {
  widthMm: 18,
  heightMm: 8,
  tallerMm: [9, 10],
  sizesPt: [4, 3.75, 3.5, 3.25, 3],
  padMm: 0.4,
};

/** A label inside a vial, read through its side. Common practice, no source. */
export const vialForm: Form = {
  widthMm: 45,
  heightMm: 15,
  tallerMm: [20],
  sizesPt: [6, 5.5, 5, 4.5, 4, 3.5, 3],
  padMm: 0.8,
};

/** A card for a cage, a box or a jar: A8 of ISO 216. That it is this size: common practice, no source. */
export const cardForm: Form = {
  widthMm: 74,
  heightMm: 52,
  tallerMm: [74, 105],
  sizesPt: [10, 9, 8, 7, 6, 5],
  padMm: 2.5,
};
