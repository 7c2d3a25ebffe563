// The Darwin Core terms that the archive uses: list of 2026-05-26 (www.tdwg.org/standards/450). Every table is a list
// of terms and rows that give some of them.

const spaces = {
  dwc: 'http://rs.tdwg.org/dwc/terms/',
  dcterms: 'http://purl.org/dc/terms/',
} as const;

export type Term = `${keyof typeof spaces}:${string}`;

/** The IRI of a term. */
export function iriOf(term: Term): string {
  const [space = 'dwc', name] = term.split(':');
  return `${spaces[space === 'dcterms' ? 'dcterms' : 'dwc']}${name}`;
}

/** The heading of a term's column. */
export function headingOf(term: Term): string {
  return term.slice(term.indexOf(':') + 1);
}

export interface Table<Name extends Term = Term> {
  readonly file: string;
  /** The class that its rows are of. */
  readonly rowType: Term;
  /** Its columns; the first is the identifier of an event. */
  readonly terms: readonly Name[];
  readonly rows: readonly Readonly<Partial<Record<Name, string | undefined>>>[];
}

export const eventTerms = [
  'dwc:eventID',
  'dwc:parentEventID',
  'dwc:eventCategory',
  'dwc:eventType',
  'dwc:fieldNumber',
  'dwc:eventDate',
  'dwc:samplingProtocol',
  'dwc:samplingEffort',
  'dwc:sampleSizeValue',
  'dwc:sampleSizeUnit',
  'dwc:habitat',
  'dwc:country',
  'dwc:stateProvince',
  'dwc:locality',
  'dwc:locationRemarks',
  'dwc:decimalLatitude',
  'dwc:decimalLongitude',
  'dwc:geodeticDatum',
  'dwc:coordinateUncertaintyInMeters',
  'dwc:verbatimCoordinates',
  'dwc:minimumElevationInMeters',
  'dwc:maximumElevationInMeters',
  'dwc:eventRemarks',
] as const satisfies readonly Term[];

export const occurrenceTerms = [
  'dwc:eventID',
  'dwc:occurrenceID',
  'dcterms:license',
  'dwc:basisOfRecord',
  'dwc:catalogNumber',
  'dwc:otherCatalogNumbers',
  'dwc:recordNumber',
  'dwc:recordedBy',
  'dwc:individualCount',
  'dwc:sex',
  'dwc:lifeStage',
  'dwc:vitality',
  'dwc:degreeOfEstablishment',
  'dwc:occurrenceStatus',
  'dwc:organismID',
  'dwc:scientificName',
  'dwc:taxonRank',
  'dwc:verbatimIdentification',
  'dwc:identificationQualifier',
  'dwc:identifiedBy',
  'dwc:dateIdentified',
  'dwc:identificationRemarks',
  'dwc:previousIdentifications',
  'dwc:preparations',
  'dwc:disposition',
  'dwc:verbatimLabel',
  'dwc:associatedTaxa',
  'dwc:associatedOccurrences',
  'dwc:occurrenceRemarks',
] as const satisfies readonly Term[];

export const relationshipTerms = [
  'dwc:eventID',
  'dwc:resourceRelationshipID',
  'dwc:resourceID',
  'dwc:relationshipOfResourceID',
  'dwc:relatedResourceID',
  'dwc:relationshipOfResource',
  'dwc:relationshipEstablishedDate',
] as const satisfies readonly Term[];

export const measurementTerms = [
  'dwc:eventID',
  'dwc:measurementID',
  'dwc:measurementType',
  'dwc:measurementValue',
  'dwc:measurementUnit',
  'dwc:measurementDeterminedDate',
  'dwc:measurementMethod',
  'dwc:measurementRemarks',
] as const satisfies readonly Term[];

type RowOf<Terms extends readonly Term[]> = Readonly<Partial<Record<Terms[number], string | undefined>>>;
export type EventRow = RowOf<typeof eventTerms>;
export type OccurrenceRow = RowOf<typeof occurrenceTerms>;
export type RelationshipRow = RowOf<typeof relationshipTerms>;
export type MeasurementRow = RowOf<typeof measurementTerms>;

/** Lists stand in one field, parted so: Darwin Core list of terms, on fields that hold lists. */
export function listOf(values: readonly (string | undefined)[]): string | undefined {
  const known = values.filter(value => value !== undefined && value !== '');
  return known.length === 0 ? undefined : known.join(' | ');
}
