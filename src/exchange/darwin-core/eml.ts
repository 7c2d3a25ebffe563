// eml.xml: what the archive is about, in Ecological Metadata Language 2.2.0 (element order as in its eml-dataset
// module, from memory).
import type {Sample} from '../../records/state.ts';
import {type LicenceName, licences} from './licences.ts';
import {xmlText} from './xml.ts';

export interface DatasetFacts {
  readonly id: string;
  readonly title: string;
  /** Who answers for it. */
  readonly creator: string;
  readonly email?: string | undefined;
  readonly licence?: LicenceName | undefined;
  /** The civil day of the export. */
  readonly day: string;
  readonly samples: readonly Sample[];
}

export function emlXml({id, title, creator, email, licence, day, samples}: DatasetFacts): string {
  const party = [
    `<individualName><surName>${xmlText(creator)}</surName></individualName>`,
    ...(email === undefined ? [] : [`<electronicMailAddress>${xmlText(email)}</electronicMailAddress>`]),
  ].join('');
  return `<?xml version="1.0" encoding="UTF-8"?>
<eml:eml xmlns:eml="https://eml.ecoinformatics.org/eml-2.2.0" packageId="${id}" system="urn:uuid" scope="system" xml:lang="en">
  <dataset>
    <alternateIdentifier>${id}</alternateIdentifier>
    <title xml:lang="en">${xmlText(title)}</title>
    <creator>${party}</creator>
    <metadataProvider>${party}</metadataProvider>
    <pubDate>${day}</pubDate>
    <language>en</language>
    <abstract><para>${ABSTRACT}</para></abstract>
${rights(licence)}${coverage(samples)}    <contact>${party}</contact>
    <methods>
      <methodStep><description><para>${METHODS}</para></description></methodStep>
    </methods>
  </dataset>
</eml:eml>
`;
}

const ABSTRACT =
  'Immature insects and arachnids brought in from the field and reared in captivity until adults appeared that could be identified. Events are the field samples, the rearing of each lot and what came out of it; occurrences are the animals as collected, the reared adults, their parasitoids, preserved immatures and hosts. Relations lead from every reared specimen to the animals and the field sample it comes from.';
const METHODS =
  'Field samples were sorted into lots; each lot was reared in a cage, an aquarium or an emergence box whose temperature was recorded. An emergence is dated by the interval between two looks. For every lot the numbers add up: what came in is what is alive and what went out; they are given as measurements of the rearing event.';

function rights(licence: LicenceName | undefined): string {
  if (licence === undefined) return '';
  const {name, url} = licences[licence];
  return `    <intellectualRights><para>This work is licensed under a <ulink url="${url}"><citetitle>${name}</citetitle></ulink>.</para></intellectualRights>\n`;
}

/** The box around all places and the span of all collecting. */
function coverage(samples: readonly Sample[]): string {
  const places = samples.flatMap(({place}) =>
    place?.latitude === undefined || place.longitude === undefined ? [] : [place],
  );
  const latitudes = places.map(({latitude}) => latitude!);
  const longitudes = places.map(({longitude}) => longitude!);
  const days = samples
    .flatMap(({collected: {from, to = from}}) => [from.slice(0, 10), to.slice(0, 10)])
    .sort();
  const box =
    places.length === 0
      ? ''
      : `      <geographicCoverage><geographicDescription>the places of collecting</geographicDescription><boundingCoordinates><westBoundingCoordinate>${Math.min(...longitudes)}</westBoundingCoordinate><eastBoundingCoordinate>${Math.max(...longitudes)}</eastBoundingCoordinate><northBoundingCoordinate>${Math.max(...latitudes)}</northBoundingCoordinate><southBoundingCoordinate>${Math.min(...latitudes)}</southBoundingCoordinate></boundingCoordinates></geographicCoverage>\n`;
  const span =
    days.length === 0
      ? ''
      : `      <temporalCoverage><rangeOfDates><beginDate><calendarDate>${days[0]}</calendarDate></beginDate><endDate><calendarDate>${days.at(-1)}</calendarDate></endDate></rangeOfDates></temporalCoverage>\n`;
  return box === '' && span === '' ? '' : `    <coverage>\n${box}${span}    </coverage>\n`;
}
