// A label for a specimen: what stands on it, line by line, before lines are broken to fit.
import type {PrintedLabel} from '../../records/state.ts';

export type LabelKind = PrintedLabel['kind'];

export interface Label {
  readonly kind: LabelKind;
  readonly specimen: string;
  readonly lines: readonly string[];
}

/**
 * On the pin from the specimen down: the data nearest to it, then how it was reared and from what host, then its
 * name, the code lowest. Data nearest, host and identification lower: Purdue Extension 401, page on labelling; host or
 * food plant on a second label, the name on a further one low on the pin: Ross, Illinois; the code lowest: Schauff
 * (ed.), Collecting and Preserving Insects and Mites, USDA, 5.6–5.7.
 */
export const pinOrder = ['data', 'rearing', 'determination', 'code'] as const satisfies LabelKind[];

/** Every kind, in the order in which they are printed. */
export const labelKinds: readonly LabelKind[] = [...pinOrder, 'vial', 'exuviae'];

/** Whether a label goes onto the pin, and not into a vial. */
export function isForPin({kind}: Label): boolean {
  return pinOrder.some(one => one === kind);
}
