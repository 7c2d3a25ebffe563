// A row about a specimen as records: how it came out, its name, how it is kept, and a remark.

type Fields = Readonly<Record<string, unknown>>;

export function specimenRecords(row: Fields): Fields[] {
  const {code, taxon, rank, qualifier, identifiedBy, identifiedOn, note} = row;
  const {preparation, medium, store, agent, killedAt} = row;
  const isNamed = taxon !== undefined && (isAdult(row) || identifiedBy !== undefined);
  const isKept = [preparation, medium, store, agent, killedAt].some(value => value !== undefined);
  return [
    given(comingOut(row)),
    ...(isNamed
      ? [
          given({
            record: 'identification',
            specimen: code,
            taxon,
            rank,
            qualifier,
            by: identifiedBy,
            on: identifiedOn,
          }),
        ]
      : []),
    ...(isKept
      ? [given({record: 'preparation', specimen: code, method: preparation, medium, store, agent, killedAt})]
      : []),
    ...(note === undefined ? [] : [given({record: 'note', about: code, text: note})]),
  ];
}

function isAdult({kind}: Fields): boolean {
  return kind === undefined || kind === 'adult';
}

function comingOut(row: Fields): Fields {
  const {
    code,
    kind,
    lot,
    sample,
    stage,
    sex,
    at,
    since,
    fate,
    condition,
    animal,
    taxon,
    individuals = 1,
  } = row;
  const together = individuals === 1 ? undefined : true;
  const own = {animal, at, codes: [code]};
  if (isAdult(row))
    return {
      record: 'emergence',
      lot,
      since,
      adults: [given({sex, count: 1})],
      fate,
      condition,
      as: row.subimago === true ? 'subimago' : undefined,
      exuviae: row.exuviae,
      ...own,
    };
  if (kind === 'parasitoid') {
    const {hosts, hyper} = row;
    return {
      record: kind,
      lot,
      since,
      taxon,
      sex,
      count: individuals,
      together,
      hosts,
      hostStage: stage,
      hyper,
      ...own,
    };
  }
  const from = lot === undefined ? {sample} : {lot};
  return {record: kind, ...from, stage, sex, taxon, count: individuals, together, ...own};
}

/** The fields that have a value. */
function given(fields: Fields): Fields {
  return Object.fromEntries(Object.entries(fields).filter(([, value]) => value !== undefined));
}
