// A name as people write it, taken apart as aggregators read it.

export interface NameParts {
  /** The lowest name that is certain, without any doubt in it (Darwin Core, scientificName). */
  readonly scientificName: string;
  /** "cf. rapae": where the doubt begins (Darwin Core, identificationQualifier). */
  readonly qualifier?: string | undefined;
  readonly rank?: string | undefined;
  /** As it was written. */
  readonly verbatim?: string | undefined;
}

/** Until somebody names them, animals reared here are known to be arthropods. */
const UNNAMED = {scientificName: 'Arthropoda', rank: 'phylum'} as const;

/** @param rank as it was given with the name; else it is read off the name */
export function partsOfName(written: string | undefined, rank?: string): NameParts {
  if (written === undefined) return UNNAMED;
  const words = written.trim().split(/\s+/);
  const doubtful = words.findIndex(word => /^(cf\.|aff\.|nr\.|\?)$/.test(word));
  const certain = doubtful < 0 ? words : words.slice(0, doubtful === words.length - 1 ? 1 : doubtful);
  const name = certain.filter(word => word !== 'sp.' && word !== 'spp.');
  if (!isLatin(name)) return {...UNNAMED, verbatim: written};
  return {
    scientificName: name.join(' '),
    qualifier: doubtful < 0 ? undefined : words.slice(doubtful).join(' '),
    rank:
      doubtful < 0 && rank !== undefined ? rank : rankOf(name, certain.length > name.length || doubtful > 0),
    verbatim: written,
  };
}

/** Whether it is written as a scientific name is: a capital, then small letters, at most three words. */
export function isLatin([first = '', ...rest]: readonly string[]): boolean {
  return /^[A-Z][a-z-]+$/.test(first) && rest.length <= 2 && rest.every(word => /^[a-z-]+$/.test(word));
}

/** Endings of names above the genus: International Code of Zoological Nomenclature, article 29.2. */
const endings = {oidea: 'superfamily', idae: 'family', inae: 'subfamily', ini: 'tribe'} as const;

function rankOf(name: readonly string[], isGenus: boolean): string | undefined {
  if (name.length === 3) return 'subspecies';
  if (name.length === 2) return 'species';
  if (isGenus) return 'genus';
  return Object.entries(endings).find(([ending]) => name[0]!.endsWith(ending))?.[1];
}
