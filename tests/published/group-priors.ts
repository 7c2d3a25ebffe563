// How a group's variation is made from the published constants of its species, and which species those are.
import {daysOf, type SpeciesConstant, speciesConstants} from './species-constants.ts';

export interface Prior {
  readonly mean: number;
  readonly sd: number;
  readonly lowerMean: number;
  readonly lowerSd: number;
  readonly correlation: number;
}

/** Within families, pooled over all rows: SD of ln(days at 20 °C), SD of thresholds, and their correlation. */
const POOLED = {sd: 0.31, lowerSd: 2.5, correlation: 0.41};
/** How many species the pooled SD counts for, and the pooled correlation. */
const SD_WEIGHT = 4;
const CORRELATION_WEIGHT = 12;
/** Another host, strain or laboratory: in the published values already, and added again as the pace of every lot. */
const PACE_SD = 0.1;

/** Highest thresholds that leave members degree-days at 20 °C. */
const HIGHEST_POINT_C = 18.4;
const HIGHEST_TAIL_C = 19.9;

/**
 * SDs shrunk to the pooled ones; the pace taken out of that of ln(days), the rest widened for a species that is not
 * among those seen (1 + 1/n).
 */
export function priorOf(species: readonly SpeciesConstant[]): Prior {
  const n = species.length;
  const ln = species.map(each => Math.log(daysOf(each, 20)));
  const lower = species.map(({lowerC}) => lowerC);
  const [mean, lowerMean] = [meanOf(ln), meanOf(lower)];
  const variance = sumOf(ln.map(x => (x - mean) ** 2));
  const lowerVariance = sumOf(lower.map(x => (x - lowerMean) ** 2));
  const covariance = sumOf(ln.map((x, i) => (x - mean) * (lower[i]! - lowerMean)));
  const shrunk = (sum: number, pooled: number) => (sum + SD_WEIGHT * pooled ** 2) / (n - 1 + SD_WEIGHT);
  const between = Math.max(shrunk(variance, POOLED.sd) - PACE_SD ** 2, PACE_SD ** 2);
  return {
    mean,
    sd: Math.sqrt(between * (1 + 1 / n)),
    lowerMean,
    lowerSd: Math.min(
      Math.sqrt(shrunk(lowerVariance, POOLED.lowerSd)),
      (HIGHEST_POINT_C - lowerMean) / Math.sqrt(3),
      (HIGHEST_TAIL_C - lowerMean) / 2.5,
    ),
    correlation:
      ((n * covariance) / Math.sqrt(variance * lowerVariance) + CORRELATION_WEIGHT * POOLED.correlation) /
      (n + CORRELATION_WEIGHT),
  };
}

interface Membership {
  readonly orders?: readonly string[];
  readonly families?: readonly string[];
  readonly genera?: readonly string[];
  readonly species?: readonly string[];
}

export const memberships: Readonly<Record<string, Membership>> = {
  lepidoptera: {orders: ['Lepidoptera']},
  noctuidae: {families: ['Noctuidae']},
  tortricidae: {families: ['Tortricidae']},
  pyraloidea: {families: ['Crambidae', 'Pyralidae']},
  gelechiidae: {families: ['Gelechiidae']},
  butterflies: {families: ['Nymphalidae', 'Pieridae']},
  coleoptera: {orders: ['Coleoptera']},
  coccinellidae: {families: ['Coccinellidae']},
  chrysomelidae: {families: ['Chrysomelidae']},
  'bark-beetles': {families: ['Scolytinae']},
  'seed-beetles': {families: ['Bruchidae']},
  'stored-product-beetles': {families: ['Bostrichidae', 'Dermestidae', 'Tenebrionidae']},
  diptera: {orders: ['Diptera']},
  drosophilidae: {families: ['Drosophilidae']},
  tephritidae: {families: ['Tephritidae']},
  agromyzidae: {families: ['Agromyzidae']},
  culicidae: {families: ['Culicidae']},
  syrphidae: {families: ['Syrphidae']},
  'dung-flies': {families: ['Muscidae', 'Scathophagidae']},
  tachinidae: {families: ['Tachinidae']},
  'parasitoid-wasps': {
    families: [
      'Aphelinidae',
      'Bethylidae',
      'Braconidae',
      'Chalcididae',
      'Dryinidae',
      'Encyrtidae',
      'Eulophidae',
      'Figitidae',
      'Ichneumonidae',
      'Megaspilidae',
      'Mymaridae',
      'Platygastridae',
      'Pteromalidae',
      'Scelionidae',
      'Trichogrammatidae',
    ],
  },
  braconidae: {families: ['Braconidae']},
  ichneumonidae: {families: ['Ichneumonidae']},
  chalcidoidea: {
    families: [
      'Aphelinidae',
      'Chalcididae',
      'Encyrtidae',
      'Eulophidae',
      'Mymaridae',
      'Pteromalidae',
      'Trichogrammatidae',
    ],
  },
  'egg-parasitoids': {families: ['Mymaridae', 'Scelionidae', 'Trichogrammatidae']},
  heteroptera: {
    families: [
      'Anthocoridae',
      'Coreidae',
      'Lygaeidae',
      'Miridae',
      'Nabidae',
      'Pentatomidae',
      'Pyrrhocoridae',
      'Reduviidae',
      'Tingidae',
      'Veliidae',
    ],
  },
  pentatomidae: {families: ['Pentatomidae']},
  miridae: {families: ['Miridae']},
  auchenorrhyncha: {families: ['Cicadellidae', 'Cixiidae', 'Delphacidae', 'Fulgoridae']},
  aphididae: {families: ['Aphididae']},
  sternorrhyncha: {families: ['Aleyrodidae', 'Coccidae', 'Diaspididae', 'Pseudococcidae', 'Psyllidae']},
  thysanoptera: {orders: ['Thysanoptera']},
  neuroptera: {orders: ['Neuroptera']},
  hemerobiidae: {families: ['Hemerobiidae']},
  chrysopidae: {families: ['Chrysopidae']},
  'predatory-mites': {families: ['Laelapidae', 'Phytoseiidae']},
  'leaf-miners': {
    families: ['Agromyzidae', 'Bedelliidae', 'Gracillariidae'],
    species: ['Keiferia lycopersicella', 'Tuta absoluta'],
  },
  'stem-borers': {
    genera: ['Chilo', 'Diatraea', 'Hydraecia', 'Scirpophaga', 'Sesamia'],
    species: ['Hypsipyla grandella'],
  },
  'gall-formers': {
    families: ['Phlaeothripidae'],
    species: [
      'Contarinia nasturtii',
      'Contarinia sorghicola',
      'Cystiphora schmidti',
      'Dasineura brassicae',
      'Pemphigus populitransversus',
      'Eriosoma lanigerum',
      'Epitrimerus pyri',
    ],
  },
  holometabola: {
    orders: ['Coleoptera', 'Diptera', 'Hymenoptera', 'Lepidoptera', 'Neuroptera', 'Siphonaptera'],
  },
  curculionidae: {families: ['Brentidae', 'Curculionidae']},
  cecidomyiidae: {families: ['Cecidomyiidae']},
  tetranychidae: {families: ['Tetranychidae']},
};

export function speciesOf(group: string): readonly SpeciesConstant[] {
  const {orders = [], families = [], genera = [], species = []} = memberships[group]!;
  return speciesConstants.filter(
    each =>
      orders.includes(each.order) ||
      families.includes(each.family) ||
      genera.includes(each.species.split(' ')[0]!) ||
      species.includes(each.species),
  );
}

export function meanOf(values: readonly number[]): number {
  return sumOf(values) / values.length;
}

function sumOf(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0);
}
