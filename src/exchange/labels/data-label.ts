// The data label: where, when and by whom the field sample was collected.
// Lines in the order of La Salle's CSIRO collecting protocol: COUNTRY, region / locality / "coll." date / collector. The
// country in capitals: Mississippi Entomological Museum Report 2016-01; Museum of Southwestern Biology 2002. Coordinates
// to three decimals of a degree at least: Wheeler, Huber & Currie 2001. Minimum of where, when and who: Schauff (ed.),
// Collecting and Preserving Insects and Mites, USDA, part 5.
import {methods} from '../../records/methods.ts';
import {listed} from '../../records/stage-words.ts';
import type {Sample} from '../../records/state.ts';
import {labelSpan} from './label-dates.ts';

export function dataLines({place = {}, collected, collectors = [], method, trap, habitat}: Sample): string[] {
  const {country, region, locality} = place;
  const {to = collected.from} = collected;
  // What was emptied before is no part of this catch.
  const from = trap?.lastEmptied ?? collected.from;
  const when = labelSpan(from.slice(0, 10), to.slice(0, 10));
  const how = method === 'other' ? '' : `, ${methods[method].words}`;
  const lines = [
    listOf([country?.toUpperCase(), region]),
    [locality, habitat].filter(part => part !== undefined).join('; '),
    listOf([coordinates(place), elevation(place)]),
    `coll. ${when}${how}`,
    collectors.length === 0 ? '' : `leg. ${listed(collectors)}`,
  ];
  return lines.filter(line => line !== '');
}

/** "47.100°N 11.250°E ±30 m". Never fewer decimals than were recorded, up to five (about a metre). */
function coordinates({latitude, longitude, uncertaintyM}: NonNullable<Sample['place']>): string | undefined {
  if (latitude === undefined || longitude === undefined) return undefined;
  const decimals = Math.min(5, Math.max(3, decimalsOf(latitude), decimalsOf(longitude)));
  const degrees = (value: number, [positive, negative]: readonly [string, string]) =>
    `${Math.abs(value).toFixed(decimals)}°${value < 0 ? negative : positive}`;
  const off = uncertaintyM === undefined ? '' : ` ±${uncertaintyM} m`;
  return `${degrees(latitude, ['N', 'S'])} ${degrees(longitude, ['E', 'W'])}${off}`;
}

function elevation({elevationM}: NonNullable<Sample['place']>): string | undefined {
  return elevationM === undefined ? undefined : `alt. ${elevationM} m`;
}

function decimalsOf(value: number): number {
  return String(value).split('.')[1]?.length ?? 0;
}

function listOf(parts: readonly (string | undefined)[]): string {
  return parts.filter(part => part !== undefined).join(', ');
}
