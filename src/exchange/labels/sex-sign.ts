// The signs of the sexes, in text presentation: one column wide, never drawn as a picture.
import type {Specimen} from '../../records/state.ts';

/** ♀ or ♂; undefined where it is not known. */
export function sexSign(sex: Specimen['sex']): string | undefined {
  if (sex === 'female') return '♀';
  return sex === 'male' ? '♂' : undefined;
}
