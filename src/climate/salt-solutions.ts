// The humidity that a saturated salt solution keeps above itself: for setting a box, and for checking a sensor.
import {monotoneCubic} from '../thermal/monotone-cubic.ts';
import {ZERO_C_IN_K} from './saturation.ts';

/** By the formula of the salt. */
export interface SaltSolution {
  readonly salt: string;
  readonly name: string;
  /** Where the source has values, °C. */
  readonly lowestC: number;
  readonly highestC: number;
  /** Relative humidity, per cent, at a temperature in that range. */
  readonly humidity: (temperatureC: number) => number;
  /** Expanded uncertainty (k = 2), per cent relative humidity. */
  readonly uncertainty: (temperatureC: number) => number;
  readonly source: string;
}

const GREENSPAN = 'Greenspan 1977, J. Res. NBS 81A, 89–96';
const OIML = 'OIML R 121:1996, table 1';
const CRC = 'CRC Handbook, Constant humidity solutions, A·exp(B/T)';

/** Values at temperatures: [°C, per cent]. */
type Points = readonly (readonly [number, number])[];

/** A polynomial in °C, its coefficients from the constant one on, and its stated uncertainty. */
interface Fitted {
  readonly coefficients: readonly number[];
  readonly uncertainty: Points;
}

/**
 * Greenspan's table 1; the signs are those that give his tabulated values back. Uncertainties: Greenspan's for NaCl
 * and MgCl2 from 15 to 30 °C, OIML R 121's elsewhere; of Mg(NO3)2 from memory.
 */
const fitted: Readonly<Record<string, Fitted>> = {
  LiCl: {
    coefficients: [11.2323, 0.00824245, -0.00021489],
    // Below 25 °C sources differ by so much, OIML R 121.
    uncertainty: [
      [5, 1.8],
      [15, 1.8],
      [20, 0.9],
      [25, 0.3],
      [40, 0.3],
    ],
  },
  CH3COOK: {
    coefficients: [22.4388, 0.156288, -0.00612268],
    uncertainty: [
      [10, 0.6],
      [20, 0.3],
      [25, 0.4],
      [30, 0.6],
    ],
  },
  MgCl2: {
    coefficients: [33.6686, -0.00797397, -0.00108988],
    uncertainty: [
      [5, 0.3],
      [15, 0.21],
      [20, 0.18],
      [25, 0.16],
      [30, 0.14],
      [40, 0.2],
    ],
  },
  K2CO3: {
    coefficients: [43.1315, 0.00147523],
    uncertainty: [
      [5, 0.5],
      [10, 0.4],
      [25, 0.4],
      [30, 0.5],
    ],
  },
  'Mg(NO3)2': {
    coefficients: [60.3514, -0.298153],
    uncertainty: [
      [5, 0.5],
      [35, 0.5],
    ],
  },
  NaCl: {
    coefficients: [75.5164, 0.0398321, -0.00265459, 2.848e-5],
    uncertainty: [
      [5, 0.3],
      [10, 0.3],
      [15, 0.18],
      [20, 0.14],
      [25, 0.12],
      [30, 0.2],
      [40, 0.2],
    ],
  },
  KCl: {
    coefficients: [88.619, -0.19334, 0.000899706],
    uncertainty: [
      [5, 0.5],
      [10, 0.4],
      [15, 0.4],
      [25, 0.3],
      [40, 0.3],
    ],
  },
  K2SO4: {
    coefficients: [98.7792, -0.0590502],
    uncertainty: [
      [5, 0.8],
      [10, 0.8],
      [15, 0.7],
      [20, 0.6],
      [25, 0.5],
      [30, 0.4],
      [40, 0.4],
    ],
  },
};

interface Tabulated {
  readonly humidity: Points;
  readonly uncertainty: Points;
}

const tabulated: Readonly<Record<string, Tabulated>> = {
  LiBr: {
    humidity: [
      [5, 7.4],
      [10, 7.1],
      [20, 6.6],
      [30, 6.2],
      [35, 6.0],
    ],
    uncertainty: [
      [5, 0.8],
      [10, 0.7],
      [20, 0.6],
      [30, 0.5],
      [35, 0.5],
    ],
  },
  NaBr: {
    humidity: [
      [5, 63.5],
      [20, 59.1],
      [25, 57.6],
      [30, 56.0],
      [35, 54.6],
    ],
    uncertainty: [
      [5, 0.8],
      [20, 0.5],
      [25, 0.4],
      [35, 0.4],
    ],
  },
  KI: {
    humidity: [
      [5, 73.3],
      [10, 72.1],
      [15, 71.0],
      [30, 67.9],
      [35, 67.0],
      [40, 66.1],
    ],
    uncertainty: [
      [5, 0.4],
      [10, 0.4],
      [15, 0.3],
      [40, 0.3],
    ],
  },
};

interface Exponential {
  readonly a: number;
  readonly b: number;
  readonly lowestC: number;
  readonly highestC: number;
  readonly uncertainty?: number;
}

/** A·exp(B/T), T in kelvin, and where it holds. */
const exponential: Readonly<Record<string, Exponential>> = {
  NH4NO3: {a: 3.54, b: 853, lowestC: 10, highestC: 40},
  NaNO3: {a: 26.94, b: 302, lowestC: 10, highestC: 40},
  NH4Cl: {a: 35.67, b: 235, lowestC: 10, highestC: 40},
  KBr: {a: 40.98, b: 203, lowestC: 5, highestC: 25},
  '(NH4)2SO4': {a: 62.06, b: 79, lowestC: 10, highestC: 40},
  BaCl2: {a: 69.99, b: 75, lowestC: 5, highestC: 25},
  // Greenspan 1977 has 93.6 per cent at 25 °C where this gives 91.9.
  KNO3: {a: 43.22, b: 225, lowestC: 0, highestC: 50, uncertainty: 1.7},
};
/** Printed to whole per cents: half of one, and a little for the fit. */
const WHOLE_PERCENT = 0.6;

const names: Readonly<Record<string, string>> = {
  LiBr: 'lithium bromide',
  LiCl: 'lithium chloride',
  CH3COOK: 'potassium acetate',
  MgCl2: 'magnesium chloride',
  K2CO3: 'potassium carbonate',
  'Mg(NO3)2': 'magnesium nitrate',
  NaBr: 'sodium bromide',
  NH4NO3: 'ammonium nitrate',
  KI: 'potassium iodide',
  NaNO3: 'sodium nitrate',
  NaCl: 'sodium chloride',
  NH4Cl: 'ammonium chloride',
  '(NH4)2SO4': 'ammonium sulfate',
  KBr: 'potassium bromide',
  KCl: 'potassium chloride',
  BaCl2: 'barium chloride',
  KNO3: 'potassium nitrate',
  K2SO4: 'potassium sulfate',
};

/** Every salt, the driest first. */
export const saltSolutions: readonly SaltSolution[] = [
  ...Object.entries(fitted).map(([salt, {coefficients, uncertainty}]) => ({
    ...labelled(salt, uncertainty, GREENSPAN),
    humidity: (t: number) => coefficients.reduceRight((sum, coefficient) => sum * t + coefficient, 0),
    uncertainty: through(uncertainty),
  })),
  ...Object.entries(tabulated).map(([salt, {humidity, uncertainty}]) => ({
    ...labelled(salt, humidity, OIML),
    humidity: through(humidity),
    uncertainty: through(uncertainty),
  })),
  ...Object.entries(exponential).map(([salt, {a, b, lowestC, highestC, uncertainty = WHOLE_PERCENT}]) => ({
    ...labelled(
      salt,
      [
        [lowestC, 0],
        [highestC, 0],
      ],
      CRC,
    ),
    humidity: (t: number) => a * Math.exp(b / (t + ZERO_C_IN_K)),
    uncertainty: () => uncertainty,
  })),
].sort((one, other) => one.humidity(20) - other.humidity(20));

/** The solution of a salt by its formula, however its letters are written. */
export function saltSolution(formula: string): SaltSolution | undefined {
  const plain = (text: string) => text.toLowerCase().replace(/[·.]\d*h2o$/, '');
  return saltSolutions.find(({salt}) => plain(salt) === plain(formula));
}

function labelled(salt: string, points: Points, source: string) {
  return {salt, name: names[salt] ?? salt, lowestC: points[0]![0], highestC: points.at(-1)![0], source};
}

/** A smooth curve through points, straight between two. */
function through(points: Points): (x: number) => number {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  if (points.length < 3) return x => ys[0]! + ((ys.at(-1)! - ys[0]!) * (x - xs[0]!)) / (xs.at(-1)! - xs[0]!);
  const cubics = monotoneCubic(xs, ys);
  return x => {
    const i = Math.min(
      Math.max(
        xs.findLastIndex(left => left <= x),
        0,
      ),
      cubics.length - 1,
    );
    const [c0, c1, c2, c3] = cubics[i]!;
    const s = x - xs[i]!;
    return c0 + s * (c1 + s * (c2 + s * c3));
  };
}
