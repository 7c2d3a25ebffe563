// Lower threshold and thermal constant of development to the adult, one row a species, as published.
//
// `compiled`: Appendix S3 of Buckley LB, Arakaki AJ, Cannistra AF, Kharouba HM, Kingsolver JG. 2017. Insect development,
// thermal plasticity and fitness implications in changing, seasonal environments. Integrative and Comparative Biology
// 57:988-998, and its master table; the compilers in part recalculated the values. `pratique`: the PRATIQUE database of
// development of arthropods. Both seen in github.com/jgking216/ICBseasonality and github.com/lbuckley/ICBseasonality.
// Of several rows of a species, one in the middle by days at 20 °C; thresholds above 18.5 °C and rows whose parts
// contradict their sum are left out. All others: the abstract of the study named.
import {readFileSync} from 'node:fs';
import {parse} from 'csv-parse/sync';

export interface SpeciesConstant {
  readonly order: string;
  readonly family: string;
  readonly species: string;
  readonly lowerC: number;
  /** From the egg, or in aphids from birth, to the adult. */
  readonly degreeDays: number;
  /** Where it was read: `compiled`, `pratique`, or the study whose abstract it was. */
  readonly source: string;
  /** Days of egg, larva and pupa at 20 °C, where all three have constants of their own. */
  readonly stageDays: readonly [egg: number, larva: number, pupa: number] | null;
}

/** A span from hatch is lengthened by the share of the egg in its order. */
const EGG_SHARE: Readonly<Record<string, number>> = {Lepidoptera: 0.12, Coleoptera: 0.16};
const EGG_SHARE_ELSEWHERE = 0.1;

export const speciesConstants: readonly SpeciesConstant[] = parse<Record<string, string>>(
  readFileSync(new URL('species-constants.csv', import.meta.url), 'utf8'),
  {columns: true},
).map(fromRow);

function fromRow(row: Record<string, string>): SpeciesConstant {
  const egg = row.from === 'hatch' ? (EGG_SHARE[row.order!] ?? EGG_SHARE_ELSEWHERE) : 0;
  const stageDays = ['egg', 'larva', 'pupa'].map(
    stage => Number(row[`${stage}DegreeDays`]) / (20 - Number(row[`${stage}LowerC`])),
  );
  return {
    order: row.order!,
    family: row.family!,
    species: row.species!,
    lowerC: Number(row.lowerC),
    degreeDays: Number(row.degreeDays) / (1 - egg),
    source: row.source!,
    stageDays: row.eggLowerC === '' ? null : [stageDays[0]!, stageDays[1]!, stageDays[2]!],
  };
}

/** Days to the adult at a constant temperature in the linear range. */
export function daysOf({lowerC, degreeDays}: SpeciesConstant, temperatureC: number): number {
  return degreeDays / (temperatureC - lowerC);
}
