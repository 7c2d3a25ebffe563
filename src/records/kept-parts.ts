// What is kept with a specimen under its number: skins, the remains of its host, a cocoon.
import type {Specimen} from './state.ts';

type Part = NonNullable<Specimen['exuviae']>;

/** With what it usually is, where its record does not say. */
export type KeptPart = Part & {readonly usual: string};

export function keptParts({exuviae, subimagoSkin, remains, cocoon}: Specimen): readonly KeptPart[] {
  const named = (part: Part | undefined, usual: string) => (part === undefined ? [] : [{...part, usual}]);
  return [
    ...named(exuviae, 'exuviae'),
    ...named(subimagoSkin, 'subimaginal exuviae'),
    ...named(remains, 'host remains'),
    ...named(cocoon, 'cocoon'),
  ];
}
