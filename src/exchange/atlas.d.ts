// Typed by hand, so that the compiler does not read a map of the world.
declare module 'world-atlas/countries-50m.json' {
  import type {GeometryCollection, Topology} from 'topojson-specification';

  const atlas: Topology<{countries: GeometryCollection<{name: string}>}>;
  export default atlas;
}
declare module 'i18n-iso-countries/codes.json' {
  const codes: readonly (readonly [alpha2: string, alpha3: string, numeric: string, subdivisions: string])[];
  export default codes;
}
