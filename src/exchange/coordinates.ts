// Coordinates as field books hold them: degrees, degrees and minutes, or degrees, minutes and seconds.
import {Refusal} from '../records/refusal.ts';

export interface Coordinates {
  /** Decimal degrees, south and west negative. */
  readonly latitude: number;
  readonly longitude: number;
}

const NUMBER = String.raw`\d+(?:[.,]\d+)?`;
const ANGLE = new RegExp(
  String.raw`^(?<first>[NSEW])?\s*(?<sign>[+−-])?(?<degrees>${NUMBER})\s*[°º:]?\s*(?:(?<minutes>${NUMBER})\s*['′’:]?\s*(?:(?<seconds>${NUMBER})\s*(?:["″”]|'')?\s*)?)?(?<last>[NSEW])?$`,
  'iu',
);

/**
 * Two angles, latitude first unless letters say otherwise: "46.2497, 8.0172", "46° 14′ 59″ N, 8° 1′ 2″ E",
 * "N 46 14.98 E 8 1.03".
 * @throws Refusal where they are no coordinates of the earth
 */
export function readCoordinates(text: string): Coordinates {
  const angles = halves(text.trim()).map(angleIn);
  const [one, two] = angles;
  if (one === undefined || two === undefined || (one.axis !== undefined && one.axis === two.axis))
    throw unreadable(text);
  const swapped = one.axis === 'longitude' || two.axis === 'latitude';
  const [latitude, longitude] = swapped ? [two.degrees, one.degrees] : [one.degrees, two.degrees];
  if (Math.abs(latitude) <= 90 && Math.abs(longitude) <= 180) return {latitude, longitude};
  const fits = Math.abs(longitude) <= 90 && Math.abs(latitude) <= 180;
  throw new Refusal(
    `latitude ${latitude} and longitude ${longitude} lie outside −90 to 90 and −180 to 180`,
    'coordinates',
    fits ? 'They look swapped: the latitude comes first.' : 'Correct them.',
  );
}

interface Angle {
  readonly degrees: number;
  readonly axis: 'latitude' | 'longitude' | undefined;
}

/** At the comma or semicolon, else after the letter of the first, else in the middle of the words. */
function halves(text: string): readonly [string, string] | readonly [] {
  const parted = /^(.+?)\s*(?:;|,\s+)\s*(.+)$/u.exec(text) ?? /^([^,]+),([^,]+)$/u.exec(text);
  if (parted !== null) return [parted[1]!, parted[2]!];
  const after = /^(.*?\d.*?[NSEW])\s*(\S.*)$/iu.exec(text);
  if (after !== null && !/^[NSEW]/iu.test(text)) return [after[1]!, after[2]!];
  const before = /^([NSEW].*?\d.*?)\s*([NSEW].*)$/iu.exec(text);
  if (before !== null) return [before[1]!, before[2]!];
  const words = text.split(/\s+/u);
  if (words.length % 2 !== 0) return [];
  const middle = words.length / 2;
  return [words.slice(0, middle).join(' '), words.slice(middle).join(' ')];
}

function angleIn(text: string): Angle | undefined {
  const {first, sign, degrees, minutes = '0', seconds = '0', last} = ANGLE.exec(text.trim())?.groups ?? {};
  if (degrees === undefined || (first !== undefined && last !== undefined)) return undefined;
  const [whole, sixtieths, rest] = [degrees, minutes, seconds].map(one => Number(one.replace(',', '.')));
  if (sixtieths! >= 60 || rest! >= 60) return undefined;
  const letter = (first ?? last)?.toUpperCase();
  const size = whole! + sixtieths! / 60 + rest! / 3600;
  const negative = (sign !== undefined && sign !== '+') || letter === 'S' || letter === 'W';
  // A millionth of a degree is a tenth of a metre.
  const degreesWritten = Math.round(size * 1e6) / 1e6;
  return {degrees: negative ? -degreesWritten : degreesWritten, axis: axisOf(letter)};
}

function axisOf(letter: string | undefined): Angle['axis'] {
  if (letter === undefined) return undefined;
  return letter === 'N' || letter === 'S' ? 'latitude' : 'longitude';
}

function unreadable(text: string): Refusal {
  return new Refusal(
    `"${text}" is no pair of coordinates`,
    'coordinates',
    'Write the latitude, a comma, then the longitude: 46.2497, 8.0172 or 46° 14′ 59″ N, 8° 1′ 2″ E.',
  );
}
