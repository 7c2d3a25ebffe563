// What a column's heading says of it. Words of several languages, as loggers set to them write.
import type {TemperatureUnit} from '../temperature-unit.ts';

export type NamedRole = 'temperature' | 'minimum' | 'maximum' | 'humidity' | 'other';

const HUMIDITY = /hum|umid|feucht|vocht|fukt|fugt|hygro|(^|[^a-z])r\.?h([^a-z]|$)|%|^h$/;
const NOT_AIR =
  /dew|taupunkt|rosee|rocio|wet.?bulb|wind(?!ow)|press|druck|hpa|rain|precip|radia|solar|lux|volt|batt|speed|gust|snow|cloud|heat.?index|set.?p|soll|co2|abs|serial|minut/;
const TEMPERATURE =
  /temp|lampotila|celsius|fahrenheit|kelvin|[°º˚�]|[℃℉]|deg\s?[cfk]([^a-z]|$)|^t([^a-z]|$)|^t?(min|max)|^t$/;
const MINIMUM = /min|lowest|^low$/;
const MAXIMUM = /max|highest|^high$/;
const TIME =
  /time|date|datum|zeit|fecha|hora|heure|tijd|stamp|instant|epoch|unix|(^|[^a-z])(data|ora|dato|tid|when|at|day)([^a-z]|$)/;

/** What a heading says its column holds; undefined where it says nothing of use. */
export function roleNamed(heading: string): NamedRole | undefined {
  const name = plainName(heading);
  if (NOT_AIR.test(name)) return 'other';
  if (HUMIDITY.test(name)) return 'humidity';
  if (MINIMUM.test(name)) return 'minimum';
  if (MAXIMUM.test(name)) return 'maximum';
  return TEMPERATURE.test(name) ? 'temperature' : undefined;
}

/**
 * What a heading calls its column when units, brackets and signs are left out: of "Temp (°C)" and "Temp (°F)" the same.
 */
export function bareName(heading: string): string {
  return plainName(heading)
    .replace(/\(.*?\)|\[.*?\]|[°º˚\uFFFD]\s?[cfk]?|[℃℉]|deg\s?[cfk]$|celsius|fahrenheit|kelvin/g, ' ')
    .replace(/[^a-z0-9]+[cfk]?\s*$/, '')
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

export function namesTime(heading: string): boolean {
  return TIME.test(plainName(heading));
}

/** Names that match however they are written: case, accents and spaces around do not count. */
export function plainName(heading: string): string {
  return heading.trim().toLowerCase().normalize('NFD').replace(/\p{M}/gu, '');
}

const UNITS: readonly RegExp[] = [
  /(?<![a-z])(?:(c)elsius|(f)ahrenheit|(k)elvin)/i,
  /[°º˚�]\s?([CFK])(?![a-z])/i,
  /(℃)|(℉)/,
  /deg\s?([CFK])(?![a-z])/i,
  /[([]\s*([CFK])\s*[)\]]/i,
  /(?:^|[^a-z]|^t|temp|temperature|min|max)([CFK])$/i,
];

/** The temperature unit that a heading or a cell names. */
export function unitNamed(text: string): TemperatureUnit | undefined {
  for (const pattern of UNITS) {
    const letter = pattern
      .exec(text)
      ?.slice(1)
      .find(found => found !== undefined);
    if (letter === undefined) continue;
    if (letter === '℃' || /c/i.test(letter)) return 'C';
    return letter === '℉' || /f/i.test(letter) ? 'F' : 'K';
  }
  return undefined;
}

/** A cell of a row that holds units only, below the heading. */
export function isUnitCell(cell: string): boolean {
  return /^[([]?\s*([°º˚�]?\s?[CFK]|deg\s?[CFK]|celsius|fahrenheit|kelvin|[℃℉]|%\s?(r\.?h\.?)?|hpa|mbar|m\/s|mm|-|utc)?\s*[)\]]?$/i.test(
    cell,
  );
}

/** A fixed offset that the heading of the time column names, such as "Time (UTC+02:00)". In milliseconds. */
export function offsetNamed(heading: string): number | undefined {
  const [all, sign, hours = '0', minutes = '0'] =
    /(?<![a-z])(?:UTC|GMT)(?:\s*([+-])(\d{1,2})(?::?(\d{2}))?)?(?!\w)/i.exec(heading) ?? [];
  if (all === undefined) return undefined;
  return (Number(hours) * 60 + Number(minutes)) * 60_000 * (sign === '-' ? -1 : 1);
}
