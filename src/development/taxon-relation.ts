// How a name that a person gives stands to a profile: the same, inside it, around it, or apart from it.
import {genusOf, orderOf, orderOfFamily} from '../records/orders.ts';
import type {Profile} from '../records/schema/index.ts';
import {classOfTradeName} from '../records/trade-names.ts';

export type Relation = 'same' | 'genus' | 'inside' | 'around' | 'apart' | 'open';

/** The higher classes of each class and genus that any profile names: "noctuidae" → its order. */
export type Classes = ReadonlyMap<string, ReadonlySet<string>>;

/** From wide to narrow. */
const RANKS = ['order', 'suborder', 'superfamily', 'family', 'subfamily'];

/** What handbooks and the classifications of all profiles say of classes: a family knows its order, a genus its family. */
export function classesOf(profiles: readonly Profile[]): Classes {
  const above = new Map([...orderOfFamily].map(([family, order]) => [family, new Set([order])] as const));
  for (const profile of profiles) {
    const named = [...classesNamed(profile), ...(isSingleKind(profile) ? [genusOf(profile) ?? ''] : [])];
    named.forEach((name, i) => {
      above.set(name, new Set([...(above.get(name) ?? []), ...named.slice(0, i)]));
    });
  }
  return above;
}

/** @param taxon as a person writes it: "Pieris sp.", "Noctuidae", "a caterpillar" */
export function relation(taxon: string, profile: Profile, classes: Classes): Relation {
  const words = taxon.toLowerCase().split(/[^\p{L}]+/u);
  const text = words.join(' ');
  if (text === profile.name.toLowerCase() || text === profile.profile.replaceAll('-', ' ')) return 'same';
  if (isSingleKind(profile) && words.includes(genusOf(profile) ?? '')) return 'genus';
  const known = [...words, classOfTradeName(words)?.toLowerCase() ?? ''].flatMap(
    word => [word, orderOf(word) ?? ''].find(name => classes.has(name)) ?? [],
  );
  const mine = classesNamed(profile);
  const nearest = mine.at(-1);
  if (known.length === 0 || nearest === undefined) return 'open';
  // A guild is a part of its order that no class names.
  const partOfOrder = profile.rank === 'guild' && mine.length === 1;
  const ownClass = !isSingleKind(profile) && !partOfOrder;
  for (const word of known) {
    if (ownClass && nearest === word) return 'same';
    if (mine.includes(word)) return 'inside';
    if (classes.get(word)!.has(nearest)) return partOfOrder ? 'open' : 'around';
  }
  return 'apart';
}

function isSingleKind({rank}: Profile): boolean {
  return rank === 'species' || rank === 'genus';
}

function classesNamed({classification}: Profile): string[] {
  return RANKS.flatMap(rank => classification[rank]?.toLowerCase() ?? []);
}
