// All labels of a specimen, in their order.

import type {Civil} from '../../records/civil.ts';
import {type KeptPart, keptParts} from '../../records/kept-parts.ts';
import {listed} from '../../records/stage-words.ts';
import type {RoomState, Specimen} from '../../records/state.ts';
import {dataLines} from './data-label.ts';
import {determinationLines} from './determination-label.ts';
import {type Label, type LabelKind, labelKinds} from './label.ts';
import {partNoun, rearingLines} from './rearing-label.ts';

/**
 * Those for the pin, from the specimen down, or for a specimen in fluid the one inside its vial; and one for the vial
 * of what is kept with it, its cast skin or the remains of its host. Until somebody has identified it there is no
 * determination label.
 * @param vial as if it were in fluid
 */
export function labelsOf(specimen: Specimen, state: RoomState, civil: Civil, vial = false): Label[] {
  const {code} = specimen;
  const data = dataOf(specimen, state);
  const rearing = rearingLines(specimen, state, civil);
  const name = determinationLines(specimen, civil);
  return [
    ...(vial || isInFluid(specimen)
      ? // Large enough for all data, because a label outside comes off: Schauff (ed.), Collecting and Preserving
        // Insects and Mites, USDA, 5.8.
        labelled(code, {vial: [code, ...data, ...rearing, ...name]})
      : labelled(code, {data, rearing, determination: name, code: [code]})),
    ...keptParts(specimen).flatMap(part => labelled(code, {exuviae: partLines(part, specimen, state, data)})),
  ];
}

/** One vial may hold the skins of several; it is labelled with the first of them. */
function partLines(
  part: KeptPart,
  specimen: Specimen,
  {specimens}: RoomState,
  data: readonly string[],
): string[] {
  const sharing = [...specimens.values()].filter(other =>
    keptParts(other).some(({code}) => code === part.code),
  );
  if (sharing[0]?.code !== specimen.code) return [];
  return [part.code, `${partNoun(part)} of ${listed(sharing.map(({code}) => code))}`, ...data];
}

function isInFluid({preparations}: Specimen): boolean {
  const last = preparations.at(-1)?.record;
  return last?.record === 'preparation' && last.method === 'fluid';
}

function dataOf({sample}: Specimen, {samples}: RoomState): string[] {
  const known = samples.get(sample);
  return known === undefined ? [] : dataLines(known);
}

function labelled(specimen: string, texts: Partial<Record<LabelKind, readonly string[]>>): Label[] {
  return labelKinds.flatMap(kind => {
    const lines = texts[kind] ?? [];
    return lines.length === 0 ? [] : [{kind, specimen, lines}];
  });
}
