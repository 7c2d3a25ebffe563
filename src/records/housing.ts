// Which kind of unit is offered for animals: water for those that live in it, a box for hidden ones, a cage for the rest.
import {methods} from './methods.ts';
import type {Profile} from './schema/index.ts';
import type {Lot, Sample, Unit} from './state.ts';

export type UnitType = Unit['type'];

/**
 * The kind of unit, as the likeliest candidate's profile has it, else by how the animals were found and what they are
 * called. Common practice, no source.
 */
export function unitTypeFor(
  sample: Pick<Sample, 'method'> | undefined,
  lot: Pick<Lot, 'material' | 'taxon'> | undefined,
  likeliest?: Profile,
): UnitType {
  if (lot?.material !== undefined) return 'emergence-box';
  const reared = likeliest?.rearing[0];
  if (reared !== undefined) return reared;
  if (lot?.taxon !== undefined && AQUATIC.test(lot.taxon)) return 'aquarium';
  if (sample?.method === 'dip-net' || sample?.method === 'kick-net') return 'aquarium';
  return sample !== undefined && methods[sample.method].how === 'material' ? 'emergence-box' : 'cage';
}

/** Orders and families whose young live in water. */
const AQUATIC =
  /^(Ephemeroptera|Odonata|Anisoptera|Zygoptera|Plecoptera|Trichoptera|Megaloptera|Culicidae|Chironomidae|Simuliidae|Chaoboridae|Dixidae|Dytiscidae|Hydrophilidae|Baetidae|Heptageniidae|Ephemeridae|Limnephilidae|Hydropsychidae|Coenagrionidae|Libellulidae|Aeshnidae|Culex|Aedes|Anopheles|Chironomus|Baetis)\b/;
