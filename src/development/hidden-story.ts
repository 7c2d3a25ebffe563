// What was seen of animals that nobody can count, in galls, wood, litter or fruit.
import type {FounderClass} from './founders.ts';
import {afterCount, animalsIn, atInstant, joined, notOut, type Party} from './parties.ts';
import type {ReadLook} from './reading.ts';
import {shareOut, sharesIn} from './standing.ts';
import type {Told} from './story.ts';
import type {Tempo} from './tempo.ts';

/**
 * Nobody knows of how many those that came out were. With a number N as likely as 1/N, what they say is when they came
 * out, of the time in which they did: Π (p_i / p)^e_i, e_i of them in a time that holds a share p_i of all, p the share
 * out by the last look; and that one at least is still to come: 1 − p^e. Where none came out, a single animal did not.
 * The parties are one typical animal that is still inside.
 */
export function tellHidden(
  tempo: Tempo,
  looks: readonly ReadLook[],
  classes: readonly FounderClass[],
  broods: readonly (number | undefined)[],
): Told | null {
  let parties: readonly Party[] = [];
  let inside = 1;
  let out = 0;
  let lnChance = 0;
  for (const look of looks) {
    const newcomers = look.joining.map(place => joined(() => tempo, classes[place]!, broods[place]));
    parties = atInstant(() => tempo, [...parties, ...newcomers], look.atDays);
    const all = animalsIn(parties);
    if (look.complete) {
      for (const {sinceDays, count} of look.emerged) {
        const share = parties.reduce(
          (sum, party) => sum + party.count * shareOut(tempo, party.standing, sinceDays),
          0,
        );
        lnChance += count * Math.log((inside * share) / all);
        out += count;
      }
      parties = parties.map(party => {
        const shares = sharesIn(tempo, party.standing);
        const stillIn = shares.reduce((sum, share) => sum + share, 0);
        return {...party, count: party.count * stillIn, standing: notOut(party.standing, shares)};
      });
      const left = animalsIn(parties);
      inside *= left / all;
      parties = parties.map(party => ({...party, count: (party.count * all) / left}));
    }
    if (look.judged.length > 0) {
      const parted = afterCount(tempo, parties, look);
      lnChance += parted.lnChance;
      parties = parted.parties;
    }
    if (!(inside > 0 && lnChance > Number.NEGATIVE_INFINITY)) return null;
  }
  lnChance += out === 0 ? Math.log(inside) : Math.log1p(-((1 - inside) ** out)) - out * Math.log(1 - inside);
  return {lnChance, parties, worthless: looks.map(() => 0)};
}
