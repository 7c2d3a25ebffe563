// What is kept with a specimen under its number: skins, the remains of its host, a cocoon.
import type {Specimen} from './state.ts';

export type KeptPart = NonNullable<Specimen['exuviae']>;

/** Each with what it usually is, where its record does not say. */
export function keptParts({
  exuviae,
  subimagoSkin,
  remains,
  cocoon,
}: Specimen): readonly (KeptPart & {readonly usual: string})[] {
  const named = (part: KeptPart | undefined, usual: string) => (part === undefined ? [] : [{...part, usual}]);
  return [
    ...named(exuviae, 'exuviae'),
    ...named(subimagoSkin, 'subimaginal exuviae'),
    ...named(remains, 'host remains'),
    ...named(cocoon, 'cocoon'),
  ];
}
