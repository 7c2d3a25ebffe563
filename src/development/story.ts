// Everything that was seen of a lot, told at one point of the unknowns: how likely it was, and who stands where after it.
import type {FounderClass} from './founders.ts';
import {
  afterCount,
  afterEmergence,
  afterRemoval,
  atInstant,
  goneInto,
  joined,
  type Parted,
  type Party,
} from './parties.ts';
import type {ReadLook} from './reading.ts';
import type {Tempo, Tempos} from './tempo.ts';

/** The end of a story. */
export interface Told {
  /** ln of the chance of everything that was seen. */
  readonly lnChance: number;
  readonly parties: readonly Party[];
  /** For every look the chance that its count was worthless. */
  readonly worthless: readonly number[];
}

/** How likely it is that a whole count is worthless. */
const WORTHLESS = 0.02;

/**
 * Tell all looks. A count more likely worthless than not leaves the parties as they were.
 * @param isHopeless stops the story where the chance so far is not worth following; then nothing comes back
 */
export function tell(
  tempos: Tempos,
  looks: readonly ReadLook[],
  classes: readonly FounderClass[],
  broods: readonly (number | undefined)[],
  isHopeless: (lnChance: number) => boolean,
): Told | null {
  let lnChance = 0;
  let all: readonly Party[] = [];
  const worthless: number[] = [];
  for (const look of looks) {
    const newcomers = look.joining.map(place => joined(tempos, classes[place]!, broods[place]));
    all = atInstant(tempos, [...all, ...newcomers], look.atDays);
    const tempo = tempos(look.lot);
    let parties: readonly Party[] = all.filter(({lot}) => lot === look.lot);
    const others = all.filter(({lot}) => lot !== look.lot);
    if (look.complete && parties.length > 0) {
      const parted = afterEmergence(tempo, parties, look.emerged);
      lnChance += parted.lnChance;
      parties = parted.parties;
    }
    const count = countOf(tempo, parties, look);
    lnChance += count.lnChance;
    parties = count.parties;
    worthless.push(count.worthless);
    for (const removal of look.removed) parties = afterRemoval(tempos, parties, removal);
    const {mergedInto: lot} = look;
    all = [...(lot === undefined ? parties : parties.map(party => goneInto(tempos, party, lot))), ...others];
    if (lnChance === Number.NEGATIVE_INFINITY || isHopeless(lnChance)) return null;
  }
  return {lnChance, parties: all, worthless};
}

/** ln((1 − q) · P + q · P if worthless), and the likelier of both as what it leads to. */
function countOf(
  tempo: Tempo,
  parties: readonly Party[],
  look: ReadLook,
): Parted & {readonly worthless: number} {
  if (look.judged.length === 0 || parties.length === 0) return {lnChance: 0, parties, worthless: 0};
  const parted = afterCount(tempo, parties, look);
  const good = Math.log1p(-WORTHLESS) + parted.lnChance;
  const bad = Math.log(WORTHLESS) + look.lnIfWorthless;
  const lnChance = Math.max(good, bad) + Math.log1p(Math.exp(-Math.abs(good - bad)));
  const worthless = Math.exp(bad - lnChance);
  return {lnChance, parties: worthless > 0.5 ? parties : parted.parties, worthless};
}
