// Days at 20 °C that a group's variation gives, against the windows computed from published species values.
// Windows: four of five unidentified members; computed over species whose threshold and constant were seen in
// abstracts (named in each profile), between-species SD shrunk to the pooled one, plus 0.10 and 0.12.
import {describe, expect, it} from 'vitest';
import {group} from '../profiles/bundled.ts';

const Z90 = 1.2815515655446004;

/** Median and 80 % window of the days of one animal at 20 °C, over members, pace and spread. */
function daysAt20(code: string, share = 1) {
  const {variation, paceSd} = group(code);
  const sd = Math.hypot(variation.lnDaysAt20.sd, paceSd, variation.cv);
  const at = (z: number) => share * Math.exp(variation.lnDaysAt20.mean + z * sd);
  return {p10: at(-Z90), p50: at(0), p90: at(Z90)};
}

function shareOf(code: string, stages: readonly string[]) {
  return group(code)
    .stages.filter(({stage}) => stages.includes(stage))
    .reduce((sum, {share}) => sum + share, 0);
}

describe('egg to adult at 20 °C: the window within 4 %, or half a day, of the published whole days', () => {
  it.each([
    ['coccinellidae', 25, 15, 41],
    ['parasitoid-wasps', 22, 13, 37],
    ['carrion-flies', 22, 13, 40],
    ['diptera', 24, 13, 44],
    ['chironomidae', 32, 17, 60],
    ['tephritidae', 33, 18, 61],
    ['hemerobiidae', 28, 16, 52],
    ['chrysomelidae', 38, 21, 71],
    ['heteroptera', 56, 26, 120],
    ['noctuidae', 57, 31, 104],
    ['lepidoptera', 54, 26, 111],
    ['coleoptera', 39, 17, 91],
    ['holometabola', 32, 13, 78],
  ])('%s: %d d, %d to %d d', (code, p50, p10, p90) => {
    const days = daysAt20(code);
    expect(Math.abs(days.p50 - p50)).toBeLessThanOrEqual(Math.max(0.55, 0.04 * p50));
    expect(Math.abs(days.p10 - p10)).toBeLessThanOrEqual(Math.max(0.55, 0.04 * p10));
    expect(Math.abs(days.p90 - p90)).toBeLessThanOrEqual(Math.max(0.55, 0.04 * p90));
  });

  it('culicidae from hatch to adult: 17 d, 9 to 31 d', () => {
    const days = daysAt20('culicidae', shareOf('culicidae', ['larva', 'pupa']));
    expect(Math.abs(days.p50 - 17)).toBeLessThanOrEqual(0.6);
    expect(Math.abs(days.p10 - 9)).toBeLessThanOrEqual(0.55);
    expect(Math.abs(days.p90 - 31)).toBeLessThanOrEqual(1.2);
  });
});

describe('from a fresh pupa (cocoon, mummy) at 20 °C, as computed from the same species and shares', () => {
  it.each([
    ['lepidoptera', 8, 38],
    ['coleoptera', 6, 34],
    ['parasitoid-wasps', 7, 20],
  ])('%s: %d to %d d', (code, p10, p90) => {
    const days = daysAt20(code, shareOf(code, ['pupa']));
    expect(Math.abs(days.p10 - p10)).toBeLessThanOrEqual(0.9);
    expect(Math.abs(days.p90 - p90)).toBeLessThanOrEqual(1.2);
  });
});

describe('a species with a table of its own lies within the window of its group', () => {
  it.each([
    [
      'Spodoptera litura, 47 to 60 d on five hosts (Maharjan and others 2023, Insects 14:412, computed)',
      'noctuidae',
      51.6,
    ],
    [
      'Gastrophysa viridula, 304.6 degree-days above 7.1 °C (Eur. J. Entomol., abstract, seen)',
      'chrysomelidae',
      304.6 / 12.9,
    ],
    ['Nasonia vitripennis, 22.5 d (Grassberger & Frank 2003, abstract, seen)', 'parasitoid-wasps', 22.5],
    [
      'Protophormia terraenovae, 240.2 above 8.95 °C (Grassberger & Reiter 2002, abstract, seen)',
      'carrion-flies',
      240.2 / 11.05,
    ],
    ['Micromus angulatus, 297 above 9.0 °C (Appl. Entomol. Zool. 39:417, seen)', 'hemerobiidae', 27],
    [
      'Harmonia axyridis, 267.3 above 11.23 °C (LaMana & Miller 1998, as compiled, seen; not among the six)',
      'coccinellidae',
      267.3 / 8.77,
    ],
    [
      'Ips typographus, 392 above 6.6 °C (Wermelinger & Seifert 1998, as compiled, seen; not among the twenty-one)',
      'coleoptera',
      392 / 13.4,
    ],
    [
      'Pieris rapae, 319.7 above 10 °C (Godin & Boivin 1998, as compiled, seen; not among the nine)',
      'lepidoptera',
      31.97,
    ],
    [
      'Vanessa atalanta, 413.4 above 7.3 °C (Bryant and others 1997, as compiled, seen; not among the nine)',
      'lepidoptera',
      413.4 / 12.7,
    ],
    [
      'Drosophila melanogaster, 142 above 9.9 °C (Pétavy and others 2001, as compiled, seen; not among the twenty)',
      'diptera',
      14.1,
    ],
  ])('%s', (_source, code, days) => {
    const window = daysAt20(code);
    expect(days).toBeGreaterThan(window.p10);
    expect(days).toBeLessThan(window.p90);
  });
});
