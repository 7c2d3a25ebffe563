// Questions about moist air that need no room: a temperature with a humidity, a wet bulb, or a salt solution.
import {type Air, airOf} from '../climate/humidity.ts';
import {type Aired, humidityFromWetBulb} from '../climate/psychrometer.ts';
import {type SaltSolution, saltSolution, saltSolutions} from '../climate/salt-solutions.ts';
import {AIR_C} from '../climate/saturation.ts';
import {Refusal} from '../records/refusal.ts';

/** As `teneral air` answers; `humidity` where it came from a wet bulb. */
export type AirAnswer = Omit<Air, 'dewPointC' | 'wetBulbC'> & {
  readonly dewPoint: number | null;
  readonly wetBulb: number;
  readonly humidity?: number;
};

/** What a salt solution keeps, and how a sensor stands to it. */
export interface SaltAnswer {
  readonly salt: string;
  readonly name: string;
  readonly humidity: number;
  /** Expanded (k = 2). */
  readonly uncertainty: number;
  readonly source: string;
  /** What a sensor showed above it, how much too much that is, and whether the salt alone explains it. */
  readonly sensor?: {readonly reads: number; readonly error: number; readonly withinUncertainty: boolean};
}

/** @throws Refusal outside what the formulas hold for */
export function airWithHumidity(temperatureC: number, rhPercent: number, aired: Aired): AirAnswer {
  inRange(temperatureC, AIR_C.lowest, AIR_C.highest, '°C', '--temperature');
  inRange(rhPercent, 0, 100, '%', '--humidity');
  return told(airOf(temperatureC, rhPercent, aired));
}

/** @throws Refusal where no air lets a wet thermometer show that */
export function airWithWetBulb(dryC: number, wetC: number, aired: Aired): AirAnswer {
  inRange(dryC, AIR_C.lowest, AIR_C.highest, '°C', '--temperature');
  inRange(wetC, AIR_C.lowest, dryC, '°C', '--wet-bulb');
  const humidity = humidityFromWetBulb(dryC, wetC, aired);
  if (humidity < 0)
    throw new Refusal(
      `a wet bulb of ${wetC} °C beside ${dryC} °C cannot be: the air would hold less than no water`,
      '--wet-bulb',
      'Check both thermometers, --pressure, and --psychrometer.',
    );
  return {...told(airOf(dryC, humidity, aired)), humidity};
}

/** @param reads what a humidity sensor shows above the solution, per cent */
export function airOverSalt(formula: string, temperatureC: number, reads?: number): SaltAnswer {
  const solution = saltSolution(formula);
  if (solution === undefined)
    throw new Refusal(
      `no salt "${formula}" is known`,
      '--salt',
      `Known are ${saltSolutions.map(({salt}) => salt).join(', ')}.`,
    );
  inRange(temperatureC, solution.lowestC, solution.highestC, '°C', `--temperature of ${solution.salt}`);
  return overSolution(solution, temperatureC, reads);
}

/** Every salt that has values at a temperature, the driest first. */
export function airOverSalts(temperatureC: number): SaltAnswer[] {
  const known = saltSolutions.filter(
    ({lowestC, highestC}) => lowestC <= temperatureC && temperatureC <= highestC,
  );
  if (known.length === 0) inRange(temperatureC, 0, 50, '°C', '--temperature');
  return known.map(solution => overSolution(solution, temperatureC)).sort((a, b) => a.humidity - b.humidity);
}

function overSolution(solution: SaltSolution, temperatureC: number, reads?: number): SaltAnswer {
  const {salt, name, source} = solution;
  const humidity = solution.humidity(temperatureC);
  const uncertainty = solution.uncertainty(temperatureC);
  const answer = {salt, name, humidity, uncertainty, source};
  if (reads === undefined) return answer;
  inRange(reads, 0, 110, '%', '--reads');
  const error = reads - humidity;
  return {...answer, sensor: {reads, error, withinUncertainty: Math.abs(error) <= uncertainty}};
}

function told({dewPointC, wetBulbC, ...rest}: Air): AirAnswer {
  return {...rest, dewPoint: dewPointC, wetBulb: wetBulbC};
}

/** @throws Refusal naming the option, the value and the range */
export function inRange(value: number, lowest: number, highest: number, sign: string, where: string): void {
  if (value >= lowest && value <= highest) return;
  throw new Refusal(
    `${value} ${sign} is outside ${lowest} to ${highest} ${sign}`,
    where,
    'The published values reach no further; check the number and its unit.',
  );
}
