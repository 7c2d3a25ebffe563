// Coordinates as field books hold them, and countries that they lie in.
import {expect, test} from 'vitest';
import {readCoordinates} from '../../src/exchange/coordinates.ts';
import {misplaced} from '../../src/exchange/country-bounds.ts';

test.each([
  ['46.249722, 8.017222', 46.249722, 8.017222],
  ['46.2497 8.0172', 46.2497, 8.0172],
  ['46,2497; 8,0172', 46.2497, 8.0172],
  ['46° 14′ 59″ N, 8° 1′ 2″ E', 46.249722, 8.017222],
  ['46°14\'59"N 8°01\'02"E', 46.249722, 8.017222],
  ['N 46 14.98 W 8 1.03', 46.249667, -8.017167],
  ['46 14 59 S 8 1 2 W', -46.249722, -8.017222],
  ['8° 1′ 2″ E, 46° 14′ 59″ N', 46.249722, 8.017222],
  ['-33.9, -70.7', -33.9, -70.7],
])('%s', (text, latitude, longitude) => {
  expect(readCoordinates(text)).toEqual({latitude, longitude});
});

test.each(['', '46', 'north of the wood', '46° 70′ N, 8° E', '46° N, 47° N', '46 N'])(
  '"%s" is none',
  text => {
    expect(() => readCoordinates(text)).toThrow(/is no pair of coordinates/);
  },
);

test('a latitude beyond the pole is refused, with the hint that the two look swapped', () => {
  expect(() => readCoordinates('120.5, 46.2')).toThrow(/They look swapped/);
  expect(() => readCoordinates('95, 190')).toThrow(/Correct them/);
});

// Positions of capitals to a tenth of a degree, from memory; the boxes are Natural Earth's.
test.each([
  ['Switzerland', 46.9, 7.4],
  ['Schweiz', 46.9, 7.4],
  ['CHE', 46.9, 7.4],
  ['United States', 38.9, -77.0],
  ['Fiji', -18.1, 178.4],
  ['Chile', -33.4, -70.7],
  ['New Zealand', -41.3, 174.8],
  ['Россия', 55.8, 37.6],
])('%s holds its capital', async (country, latitude, longitude) => {
  expect(await misplaced(country, {latitude, longitude})).toBeUndefined();
});

test('a sign or the order that is wrong is named; a country nobody knows is not asked about', async () => {
  expect(await misplaced('Switzerland', {latitude: 46.9, longitude: -7.4})).toMatch(
    /^46\.9° N, 7\.4° W lie outside Switzerland; with the other sign of the longitude they would lie in it/,
  );
  expect(await misplaced('Chile', {latitude: 33.4, longitude: -70.7})).toMatch(/other sign of the latitude/);
  expect(await misplaced('Kenya', {latitude: 36.8, longitude: -1.3})).toMatch(
    /latitude and longitude swapped/,
  );
  expect(await misplaced('Peru', {latitude: 60, longitude: 20})).toMatch(/lie outside Peru \(/);
  expect(await misplaced('Varenland', {latitude: 46, longitude: 8})).toBeUndefined();
});
