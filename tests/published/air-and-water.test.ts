// Moist air, salt solutions, oxygen and ammonia against printed tables; the citation stands beside each.
import {describe, expect, it} from 'vitest';
import {ammoniumPKa, unionisedShare} from '../../src/climate/ammonia.ts';
import {airOf} from '../../src/climate/humidity.ts';
import {oxygenSaturationMgL} from '../../src/climate/oxygen.ts';
import {standardPressureKPa} from '../../src/climate/pressure.ts';
import {humidityFromWetBulb} from '../../src/climate/psychrometer.ts';
import {saltSolution} from '../../src/climate/salt-solutions.ts';
import {dewPointC, saturationKPa, saturationWmoKPa} from '../../src/climate/saturation.ts';

const atSeaLevel = {pressureKPa: 101.325, psychrometer: 'ventilated'} as const;

const within = (value: number, printed: number, tolerance: number) =>
  expect(Math.abs(value - printed), `${value} for ${printed}`).toBeLessThanOrEqual(tolerance);

// CRC Handbook of Chemistry and Physics, 73rd ed. 1992–93, vapour pressure of water, kPa. Two curves fitted to
// different measurements differ by up to 0.06 per cent.
describe('saturation vapour pressure', () => {
  it.each([
    [1, 0.65716],
    [2, 0.70605],
    [3, 0.75813],
    [4, 0.81359],
    [5, 0.8726],
    [6, 0.93537],
    [7, 1.0021],
    [9, 1.1482],
    [10, 1.2281],
    [11, 1.3129],
    [12, 1.4027],
    [13, 1.4979],
    [14, 1.5988],
    [15, 1.7056],
    [17, 1.938],
    [21, 2.4877],
    [22, 2.6447],
    [23, 2.8104],
    [24, 2.985],
    [26, 3.3629],
    [27, 3.567],
    [28, 3.7818],
    [29, 4.0078],
    [30, 4.2455],
    [31, 4.4953],
    [33, 5.0335],
    [34, 5.3229],
    [35, 5.6267],
    [37, 6.2795],
    [39, 6.9969],
    [40, 7.3814],
  ])('at %d °C is %d kPa', (temperature, printed) => {
    within(saturationKPa(temperature), printed, Math.max(0.0006 * printed, 0.0006));
  });
});

// Hyland and Wexler 1983, hPa, as tabulated by a third party.
describe('saturation vapour pressure by Hyland and Wexler', () => {
  it.each([
    [0, 6.11213],
    [10, 12.27995],
    [20, 23.38804],
    [30, 42.4603],
    [40, 73.8346],
  ])('at %d °C is %d hPa', (temperature, printed) => {
    within(saturationKPa(temperature) * 10, printed, 0.03);
  });
});

// WMO-No. 8, annex 4.B, hPa, as tabulated by a third party.
describe('saturation vapour pressure by the formula of the WMO', () => {
  it.each([
    [0, 6.112],
    [20, 23.32596],
    [30, 42.33724],
    [40, 73.67458],
  ])('at %d °C is %d hPa', (temperature, printed) => {
    within(saturationWmoKPa(temperature) * 10, printed, 0.0006);
  });
});

describe('single values', () => {
  it('the triple point is at 611.657 Pa (Wexler 1976, J. Res. NBS 80A, 775, abstract)', () => {
    within(saturationKPa(0.01) * 1000, 611.657, 0.05);
  });

  it('a ventilated psychrometer at 25.6 and 19.5 °C and 87.9 kPa gives 1.91 kPa (FAO Paper 56, chapter 3, example 4)', () => {
    const humidity = humidityFromWetBulb(25.6, 19.5, {...atSeaLevel, pressureKPa: 87.9});
    within((humidity / 100) * saturationWmoKPa(25.6), 1.91, 0.005);
  });

  it('1.68 kPa at 25 °C has its dew point at 14.8 °C (FAO Paper 56, chapter 6, example 20)', () => {
    within(dewPointC(25, (100 * 1.68) / saturationWmoKPa(25)), 14.8, 0.05);
  });

  it('air of 40 °C with a wet bulb of 20 °C has 14 per cent (ASHRAE Fundamentals 2017, chapter 1, example 1)', () => {
    within(humidityFromWetBulb(40, 20, atSeaLevel), 14, 1);
  });

  it('a wet bulb of 62 °F at 68 °F is 71 per cent (US Army TM 5-3610-285-14, page 710)', () => {
    within(humidityFromWetBulb((68 - 32) / 1.8, (62 - 32) / 1.8, atSeaLevel), 71, 2);
  });

  it('the pKa of ammonium at 18 °C is 9.465 (Hobiger 1996, UBA-BE-076)', () => {
    within(ammoniumPKa(18), 9.465, 0.005);
    within(0.2 * unionisedShare(18, 7.7), 0.0032, 0.0003);
  });
});

// Climate and humidity table, trade data sheet, whole °C; and dew point chart, trade sheet (seen).
describe('dew point', () => {
  it.each([
    [40, 70, 33, 1.0],
    [40, 80, 36, 1.0],
    [40, 90, 38, 1.0],
    [40, 100, 40, 1.0],
    [35, 20, 8, 1.0],
    [35, 80, 31, 1.0],
    [35, 90, 33, 1.0],
    [35, 100, 35, 1.0],
    [30, 30, 10, 1.0],
    [30, 40, 14, 1.0],
    [30, 60, 21, 1.0],
    [30, 70, 24, 1.0],
    [30, 80, 26, 1.0],
    [30, 90, 28, 1.0],
    [25, 20, 0, 1.0],
    [25, 40, 10, 1.0],
    [25, 60, 16, 1.0],
    [25, 70, 19, 1.0],
    [25, 80, 21, 1.0],
    [25, 90, 23, 1.0],
    [25, 100, 25, 1.0],
    [20, 30, 1, 1.0],
    [20, 40, 5, 1.0],
    [20, 50, 9, 1.0],
    [20, 60, 12, 1.0],
    [20, 70, 14, 1.0],
    [20, 80, 16, 1.0],
    [20, 90, 18, 1.0],
    [20, 100, 20, 1.0],
    [15, 50, 4, 1.0],
    [15, 60, 7, 1.0],
    [15, 70, 9, 1.0],
    [15, 80, 11, 1.0],
    [15, 100, 15, 1.0],
    [10, 50, 0, 1.0],
    [10, 70, 4, 1.0],
    [10, 90, 8, 1.0],
    [10, 100, 10, 1.0],
    [5, 70, 0, 1.0],
    [5, 90, 3, 1.0],
    [5, 100, 5, 1.0],
    [30, 55, 20, 0.5],
  ])('at %d °C and %d per cent is %d °C', (temperature, humidity, printed, tolerance) => {
    within(airOf(temperature, humidity, atSeaLevel).dewPointC ?? Number.NaN, printed, tolerance);
  });
});

// Student psychrometric table (Weather and Water, section 2.3), whole per cents; its pressure and coefficient are not
// stated, so that 2.5 per cent are left open.
describe('humidity from a dry and a wet bulb', () => {
  it.each([
    [10, 9, 88],
    [12, 11, 89],
    [15, 14, 90],
    [18, 17, 91],
    [20, 19, 91],
    [22, 21, 92],
    [25, 24, 92],
    [28, 27, 93],
    [30, 29, 93],
    [12, 10, 79],
    [15, 13, 80],
    [20, 18, 83],
    [22, 20, 84],
    [25, 23, 85],
    [28, 26, 86],
    [30, 28, 86],
    [34, 32, 87],
    [10, 7, 66],
    [12, 9, 68],
    [15, 12, 71],
    [18, 15, 73],
    [20, 17, 75],
    [22, 19, 76],
    [25, 22, 77],
    [28, 25, 79],
    [30, 27, 80],
    [10, 6, 56],
    [12, 8, 59],
    [15, 11, 62],
    [18, 14, 65],
    [22, 18, 69],
    [25, 21, 71],
    [30, 26, 73],
    [34, 30, 75],
    [10, 5, 45],
    [12, 7, 49],
    [15, 10, 54],
    [20, 15, 59],
    [25, 20, 64],
    [28, 23, 66],
    [30, 25, 67],
    [34, 29, 69],
    [12, 6, 40],
    [15, 9, 45],
    [18, 12, 50],
    [20, 14, 52],
    [22, 16, 54],
    [25, 19, 57],
    [28, 22, 60],
    [30, 24, 61],
    [34, 28, 64],
    [10, 3, 26],
    [12, 5, 31],
    [15, 8, 37],
    [20, 13, 45],
    [22, 15, 48],
    [25, 18, 51],
    [28, 21, 54],
    [30, 23, 56],
    [34, 27, 59],
    [10, 2, 16],
    [12, 4, 22],
    [20, 12, 38],
    [22, 14, 41],
    [25, 17, 45],
    [28, 20, 49],
    [30, 22, 50],
    [12, 3, 14],
    [25, 16, 40],
    [28, 19, 43],
    [30, 21, 45],
    [34, 25, 49],
  ])('%d °C and %d °C are %d per cent, and back', (dry, wet, printed) => {
    const humidity = humidityFromWetBulb(dry, wet, atSeaLevel);
    within(humidity, printed, 2.5);
    within(airOf(dry, humidity, atSeaLevel).wetBulbC, wet, 1e-6);
  });
});

// ASHRAE Handbook Fundamentals 2017, chapter 1, table 1, Pa.
describe('pressure of the standard atmosphere', () => {
  it.each([
    [0, 101325],
    [500, 95461],
    [1000, 89875],
    [4000, 61640],
  ])('at %d m is %d Pa', (altitude, printed) => {
    within(standardPressureKPa(altitude) * 1000, printed, 1);
  });
});

// OIML R 121:1996, table 1, with its uncertainty.
describe('humidity over salt solutions, OIML', () => {
  it.each([
    ['LiBr', 5, 7.4, 0.8],
    ['LiBr', 10, 7.1, 0.7],
    ['LiBr', 20, 6.6, 0.6],
    ['LiBr', 30, 6.2, 0.5],
    ['LiBr', 35, 6.0, 0.5],
    ['LiCl', 5, 13, 1.8],
    ['LiCl', 10, 13, 1.8],
    ['LiCl', 15, 12, 1.8],
    ['LiCl', 20, 12, 0.9],
    ['LiCl', 25, 11.3, 0.3],
    ['LiCl', 30, 11.3, 0.3],
    ['LiCl', 35, 11.3, 0.3],
    ['CH3COOK', 10, 23.4, 0.6],
    ['CH3COOK', 20, 23.1, 0.3],
    ['CH3COOK', 25, 22.5, 0.4],
    ['MgCl2', 5, 33.6, 0.3],
    ['MgCl2', 20, 33.1, 0.2],
    ['MgCl2', 35, 32.1, 0.2],
    ['MgCl2', 40, 31.6, 0.2],
    ['K2CO3', 5, 43.1, 0.5],
    ['K2CO3', 10, 43.1, 0.4],
    ['K2CO3', 20, 43.2, 0.4],
    ['K2CO3', 25, 43.2, 0.4],
    ['K2CO3', 30, 43.2, 0.5],
    ['NaBr', 5, 63.5, 0.8],
    ['NaBr', 20, 59.1, 0.5],
    ['NaBr', 25, 57.6, 0.4],
    ['NaBr', 30, 56.0, 0.4],
    ['NaBr', 35, 54.6, 0.4],
    ['KI', 5, 73.3, 0.4],
    ['KI', 10, 72.1, 0.4],
    ['KI', 15, 71.0, 0.3],
    ['KI', 30, 67.9, 0.3],
    ['KI', 35, 67.0, 0.3],
    ['KI', 40, 66.1, 0.3],
    ['NaCl', 5, 75.7, 0.3],
    ['NaCl', 10, 75.7, 0.3],
    ['NaCl', 15, 75.6, 0.2],
    ['NaCl', 20, 75.5, 0.2],
    ['NaCl', 25, 75.3, 0.2],
    ['NaCl', 30, 75.1, 0.2],
    ['NaCl', 35, 74.9, 0.2],
    ['NaCl', 40, 74.7, 0.2],
    ['KCl', 5, 87.7, 0.5],
    ['KCl', 10, 86.8, 0.4],
    ['KCl', 15, 85.9, 0.4],
    ['KCl', 25, 84.2, 0.3],
    ['KCl', 30, 83.6, 0.3],
    ['KCl', 35, 83.0, 0.3],
    ['KCl', 40, 82.3, 0.3],
    ['K2SO4', 10, 98.2, 0.8],
    ['K2SO4', 15, 97.9, 0.7],
    ['K2SO4', 20, 97.6, 0.6],
    ['K2SO4', 25, 97.3, 0.5],
    ['K2SO4', 30, 97.0, 0.4],
    ['K2SO4', 35, 96.7, 0.4],
    ['K2SO4', 40, 96.4, 0.4],
  ])('%s at %d °C keeps %d per cent', (salt, temperature, printed, tolerance) => {
    within(saltSolution(salt)?.humidity(temperature) ?? Number.NaN, printed, tolerance);
  });
});

// Greenspan 1977, J. Res. NBS 81A, 89–96, with his uncertainty.
describe('humidity over salt solutions, Greenspan', () => {
  it.each([
    ['NaCl', 15, 75.61, 0.18],
    ['MgCl2', 15, 33.3, 0.21],
    ['NaCl', 20, 75.47, 0.14],
    ['MgCl2', 20, 33.07, 0.18],
    ['NaCl', 25, 75.29, 0.12],
    ['MgCl2', 25, 32.78, 0.16],
    ['MgCl2', 30, 32.44, 0.14],
  ])('%s at %d °C keeps %d per cent', (salt, temperature, printed, tolerance) => {
    within(saltSolution(salt)?.humidity(temperature) ?? Number.NaN, printed, tolerance);
  });
});

// CRC Handbook, Constant humidity solutions, whole per cents.
describe('humidity over salt solutions, CRC', () => {
  it.each([
    ['LiCl', 25, 11, 0.6],
    ['MgCl2', 25, 33, 0.6],
    ['Mg(NO3)2', 25, 53, 0.6],
    ['NaBr', 25, 58, 0.6],
    ['NH4NO3', 25, 62, 0.6],
    ['KI', 25, 69, 0.6],
    ['NaNO3', 25, 74, 0.6],
    ['NaCl', 25, 75, 0.6],
    ['NH4Cl', 25, 79, 0.6],
    ['KBr', 25, 81, 0.6],
    ['(NH4)2SO4', 25, 81, 0.6],
    ['KCl', 25, 84, 0.6],
    ['BaCl2', 25, 90, 0.6],
    ['KNO3', 25, 92, 0.6],
    ['K2SO4', 25, 97, 0.6],
  ])('%s at %d °C keeps %d per cent', (salt, temperature, printed, tolerance) => {
    within(saltSolution(salt)?.humidity(temperature) ?? Number.NaN, printed, tolerance);
  });
});

// EN 25814 / ISO 5814, solubility table, mg/L.
describe('oxygen at saturation', () => {
  it.each([
    [0, 14.6, 0.06],
    [1, 14.2, 0.06],
    [2, 13.8, 0.06],
    [4, 13.1, 0.06],
    [5, 12.8, 0.06],
    [6, 12.5, 0.06],
    [11, 11.0, 0.06],
    [13, 10.5, 0.06],
    [14, 10.3, 0.06],
    [16, 9.87, 0.012],
    [17, 9.66, 0.012],
    [19, 9.28, 0.012],
    [21, 8.91, 0.012],
    [22, 8.74, 0.012],
    [24, 8.42, 0.012],
    [25, 8.26, 0.012],
    [26, 8.11, 0.012],
    [27, 7.97, 0.012],
    [29, 7.69, 0.012],
    [30, 7.56, 0.012],
  ])('at %d °C is %d mg/L', (temperature, printed, tolerance) => {
    within(oxygenSaturationMgL(temperature), printed, tolerance);
  });
});

// Published instrument method, table 3, one decimal; its older solubility reads up to 0.12 high.
describe('oxygen at saturation by pressure', () => {
  it.each([
    [0, 775, 14.9],
    [0, 760, 14.6],
    [0, 750, 14.4],
    [0, 725, 13.9],
    [0, 700, 13.5],
    [0, 675, 12.9],
    [0, 650, 12.5],
    [0, 625, 12.0],
    [5, 775, 13.1],
    [5, 760, 12.8],
    [5, 750, 12.6],
    [5, 700, 11.8],
    [5, 675, 11.4],
    [5, 650, 10.9],
    [5, 625, 10.5],
    [10, 775, 11.6],
    [10, 760, 11.3],
    [10, 750, 11.2],
    [10, 700, 10.4],
    [10, 675, 10.1],
    [10, 650, 9.7],
    [15, 750, 10.0],
    [15, 725, 9.7],
    [15, 700, 9.3],
    [15, 675, 9.0],
    [15, 650, 8.7],
    [18, 775, 9.7],
    [18, 760, 9.5],
    [18, 750, 9.4],
    [18, 725, 9.1],
    [18, 700, 8.8],
    [20, 775, 9.3],
    [20, 725, 8.7],
    [20, 700, 8.4],
    [20, 675, 8.1],
    [20, 650, 7.8],
    [20, 625, 7.5],
    [23, 775, 8.8],
    [23, 750, 8.5],
    [23, 725, 8.2],
    [23, 650, 7.4],
    [23, 625, 7.1],
  ])('at %d °C and %d mmHg is %d mg/L', (temperature, mmHg, printed) => {
    within(oxygenSaturationMgL(temperature, mmHg * 0.133322387), printed, 0.11);
  });
});

// Garcia and Gordon 1992, Limnol. Oceanogr. 37, 1307, with vapour pressure; output printed in a package manual.
describe('oxygen at saturation after Garcia and Gordon', () => {
  it.each([
    [5, 101.2, 12.754794],
    [15, 100.8, 10.031147],
  ])('at %d °C and %d kPa is %d mg/L', (temperature, pressure, printed) => {
    within(oxygenSaturationMgL(temperature, pressure), printed, 0.01);
  });
});

// EN 25814 / ISO 5814, annex, mg/L per g/kg: a straight line from fresh water to the sea.
describe('what a gram of salt per kilogram takes away', () => {
  it.each([
    [0, 0.0875],
    [20, 0.0475],
    [25, 0.0421],
    [30, 0.0371],
  ])('at %d °C is %d mg/L', (temperature, printed) => {
    within(
      (oxygenSaturationMgL(temperature) - oxygenSaturationMgL(temperature, 101.325, 35)) / 35,
      printed,
      0.004,
    );
  });
});

// Trussell 1972, J. Fish. Res. Board Can. 29, 1505, per cent, as tabulated in a test-kit manual; within 3 per cent of
// Emerson et al. 1975.
describe('un-ionised share of ammonia', () => {
  it.each([
    [7.0, 15, 0.27, 0.01],
    [7.0, 20, 0.4, 0.012],
    [7.0, 25, 0.55, 0.0165],
    [7.1, 10, 0.23, 0.01],
    [7.1, 20, 0.5, 0.015],
    [7.1, 25, 0.7, 0.021],
    [7.2, 10, 0.29, 0.01],
    [7.2, 15, 0.43, 0.0129],
    [7.2, 20, 0.63, 0.0189],
    [7.2, 25, 0.88, 0.0264],
    [7.3, 10, 0.37, 0.0111],
    [7.3, 15, 0.54, 0.0162],
    [7.3, 20, 0.79, 0.0237],
    [7.3, 25, 1.1, 0.033],
    [7.4, 10, 0.47, 0.0141],
    [7.4, 20, 0.99, 0.0297],
    [7.4, 25, 1.38, 0.0414],
    [7.5, 10, 0.59, 0.0177],
    [7.5, 20, 1.24, 0.0372],
    [7.5, 25, 1.73, 0.0519],
    [7.6, 10, 0.74, 0.0222],
    [7.6, 20, 1.56, 0.0468],
    [7.6, 25, 2.17, 0.0651],
    [7.7, 20, 1.96, 0.0588],
    [7.7, 25, 2.72, 0.0816],
    [7.8, 15, 1.69, 0.0507],
    [7.8, 20, 2.45, 0.0735],
    [7.8, 25, 3.39, 0.1017],
    [7.9, 10, 1.46, 0.0438],
    [7.9, 20, 3.06, 0.0918],
    [7.9, 25, 4.24, 0.1272],
    [8.0, 15, 2.65, 0.0795],
    [8.0, 20, 3.83, 0.1149],
    [8.0, 25, 5.28, 0.1584],
    [8.1, 10, 2.29, 0.0687],
    [8.1, 15, 3.32, 0.0996],
    [8.2, 10, 2.86, 0.0858],
    [8.2, 20, 5.94, 0.1782],
    [8.3, 15, 5.16, 0.1548],
    [8.3, 20, 7.36, 0.2208],
    [8.3, 25, 10.0, 0.3],
    [8.4, 15, 6.41, 0.1923],
    [8.4, 25, 12.27, 0.3681],
    [8.5, 10, 5.55, 0.1665],
    [8.5, 20, 11.18, 0.3354],
    [8.5, 25, 14.97, 0.4491],
  ])('at pH %d and %d °C is %d per cent', (ph, temperature, printed, tolerance) => {
    within(100 * unionisedShare(temperature, ph), printed, tolerance);
  });
});
