// Where countries lie: the box around each part of a country. From Natural Earth's Admin 0 boundaries, 1:50m, version
// 4.1.0, as npm's world-atlas redistributes them. Loaded only when coordinates are to be held against a country.
import {feature} from 'topojson-client';
import type {Coordinates} from './coordinates.ts';

/** Degrees. */
interface Box {
  readonly west: number;
  readonly south: number;
  readonly east: number;
  readonly north: number;
}

/** Small islands are left out and coasts are drawn roughly at this scale. */
const MARGIN_DEGREES = 1;

/** Languages in which a country's name is understood, beside its two- and three-letter codes. */
const LANGUAGES = ['en', 'de', 'fr', 'es', 'it', 'pt', 'nl', 'pl', 'cs', 'sv', 'da', 'fi', 'hu'] as const;

/**
 * What speaks against coordinates being in the country: which change would put them there, where one does.
 * @returns undefined where they may be in it, or nobody here knows the country
 */
export async function misplaced(country: string, at: Coordinates): Promise<string | undefined> {
  const boxes = await boxesOf(country);
  if (boxes === undefined || isIn(boxes, at)) return undefined;
  const {latitude, longitude} = at;
  const changes: readonly (readonly [string, Coordinates])[] = [
    ['the other sign of the longitude', {latitude, longitude: -longitude}],
    ['the other sign of the latitude', {latitude: -latitude, longitude}],
    ['latitude and longitude swapped', {latitude: longitude, longitude: latitude}],
    ['the other sign of both', {latitude: -latitude, longitude: -longitude}],
  ];
  const mended = changes.find(([, changed]) => isIn(boxes, changed));
  const would = mended === undefined ? '' : `; with ${mended[0]} they would lie in it`;
  return `${degrees(at)} lie outside ${country}${would} (Natural Earth 1:50m, a degree of margin)`;
}

async function boxesOf(name: string): Promise<readonly Box[] | undefined> {
  const {default: codes} = await import('i18n-iso-countries/codes.json', {with: {type: 'json'}});
  const wanted = plain(name);
  const code = codes.find(([alpha2, alpha3]) =>
    [alpha2, alpha3, ...namesOf(alpha2)].some(one => plain(one) === wanted),
  );
  if (code === undefined) return undefined;
  const {default: atlas} = await import('world-atlas/countries-50m.json', {with: {type: 'json'}});
  const shape = atlas.objects.countries.geometries.find(({id}) => id === code[2]);
  if (shape === undefined) return undefined;
  const country = feature(atlas, shape);
  const geometry = country.type === 'Feature' ? country.geometry : undefined;
  if (geometry?.type === 'Polygon') return [boxAround(geometry.coordinates[0]!)];
  return geometry?.type === 'MultiPolygon'
    ? geometry.coordinates.map(outlines => boxAround(outlines[0]!))
    : undefined;
}

function namesOf(alpha2: string): string[] {
  return LANGUAGES.flatMap(language => displayNames(language).of(alpha2) ?? []);
}

const kept = new Map<string, Intl.DisplayNames>();

function displayNames(language: string): Intl.DisplayNames {
  const known = kept.get(language) ?? new Intl.DisplayNames([language], {type: 'region'});
  kept.set(language, known);
  return known;
}

/** Letters only, without accents and without regard to case. */
function plain(name: string): string {
  return name
    .normalize('NFD')
    .replace(/[^\p{L}]/gu, '')
    .toLowerCase();
}

function boxAround(outline: readonly (readonly number[])[]): Box {
  const [east, north] = [outline.map(([x]) => x!), outline.map(([, y]) => y!)];
  return {
    west: Math.min(...east),
    south: Math.min(...north),
    east: Math.max(...east),
    north: Math.max(...north),
  };
}

function isIn(boxes: readonly Box[], {latitude, longitude}: Coordinates): boolean {
  return boxes.some(
    ({west, south, east, north}) =>
      longitude >= west - MARGIN_DEGREES &&
      longitude <= east + MARGIN_DEGREES &&
      latitude >= south - MARGIN_DEGREES &&
      latitude <= north + MARGIN_DEGREES,
  );
}

function degrees({latitude, longitude}: Coordinates): string {
  const side = (value: number, positive: string, negative: string) =>
    `${Math.abs(value)}° ${value < 0 ? negative : positive}`;
  return `${side(latitude, 'N', 'S')}, ${side(longitude, 'E', 'W')}`;
}
