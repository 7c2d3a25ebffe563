// Degrees Celsius, degrees Fahrenheit and kelvin.

export type TemperatureUnit = 'C' | 'F' | 'K';

/** The unit as people read it. */
export const unitSign: Readonly<Record<TemperatureUnit, string>> = {C: '°C', F: '°F', K: 'K'};

/** A temperature in another unit. 0 °C = 32 °F = 273.15 K, 1 °C = 1.8 °F = 1 K (the units' definitions). */
export function convert(temperature: number, from: TemperatureUnit, to: TemperatureUnit): number {
  return from === to ? temperature : fromCelsius(toCelsius(temperature, from), to);
}

/** Temperatures in another unit; the same array where nothing is to be done. */
export function convertAll(
  temperatures: Float64Array,
  from: TemperatureUnit,
  to: TemperatureUnit,
): Float64Array {
  return from === to ? temperatures : temperatures.map(temperature => convert(temperature, from, to));
}

function toCelsius(temperature: number, unit: TemperatureUnit): number {
  if (unit === 'F') return (temperature - 32) / 1.8;
  return unit === 'K' ? temperature - 273.15 : temperature;
}

function fromCelsius(celsius: number, unit: TemperatureUnit): number {
  if (unit === 'F') return celsius * 1.8 + 32;
  return unit === 'K' ? celsius + 273.15 : celsius;
}
