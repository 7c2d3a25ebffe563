// What holds for every bundled profile, whatever its figures.
import {describe, expect, it} from 'vitest';
import type {Profile} from '../../src/records/schema/index.ts';
import {compareStages} from '../../src/records/stage.ts';
import {landmarksOf, rateModel} from '../../src/thermal/rate-model.ts';
import {asWritten, bundled, bundledCodes, group, taxon} from './bundled.ts';

const species = bundledCodes.filter(code => !('variation' in bundled(code) || 'undated' in bundled(code)));
const groups = bundledCodes.filter(code => 'variation' in bundled(code));
const undated = bundledCodes.filter(code => 'undated' in bundled(code));

function sourceOf({sources}: Profile, id: string | undefined) {
  return sources.find(source => source.id === id);
}

describe('every bundled profile', () => {
  it('there are moths, flies, mayflies, beetles, lacewings, wasps and mites, and groups of each rank', () => {
    const orders = new Set(species.map(code => bundled(code).classification.order));
    for (const order of [
      'Lepidoptera',
      'Diptera',
      'Ephemeroptera',
      'Coleoptera',
      'Neuroptera',
      'Hymenoptera',
    ])
      expect(orders).toContain(order);
    expect(orders).toContain('Trombidiformes');
    expect(new Set(groups.map(code => bundled(code).rank))).toEqual(new Set(['order', 'family', 'guild']));
  });

  it.each(bundledCodes)('%s: the file is named after its code, and each kind of unit has a reason', code => {
    const profile = bundled(code);
    expect(profile.profile).toBe(code);
    expect(profile.rearing.length).toBeGreaterThan(0);
  });

  it.each(bundledCodes)(
    '%s: every field with a default is written out, so it can be read unchecked',
    code => {
      expect(bundled(code)).toEqual(asWritten(code));
    },
  );

  it.each(bundledCodes)(
    '%s: what was seen says where, what was computed says how, ids are not shared',
    code => {
      const {sources} = bundled(code);
      expect(new Set(sources.map(({id}) => id)).size).toBe(sources.length);
      for (const {provenance, locator, note, citation} of sources) {
        if (provenance === 'seen') expect(locator ?? note ?? citation).not.toBe('');
        if (provenance === 'common-practice')
          expect(`${citation} ${note}`).toMatch(/no source|common practice|4 °C above|no published/i);
        if (provenance === 'from-memory') expect(citation).not.toMatch(/seen/i);
      }
    },
  );

  it.each(bundledCodes)('%s: hours of adults, seasons of diapause and unsourced limits say so', code => {
    const profile = bundled(code);
    expect(profile.paceSource).toBeDefined();
    if (profile.adult.holdHours !== undefined) expect(profile.adult.source).toBeDefined();
    for (const {source} of profile.diapause)
      expect(sourceOf(profile, source)?.provenance).toBe('common-practice');
    const {temperature} = profile.limits;
    if (temperature?.lethalHigh ?? temperature?.lethalLow) {
      expect(sourceOf(profile, temperature?.lethalSource)?.provenance).toBe('seen');
    }
  });

  it.each(bundledCodes)('%s: temperature limits rise from lethal low to lethal high', code => {
    const {temperature} = bundled(code).limits;
    const rising = [
      temperature?.lethalLow,
      temperature?.low,
      temperature?.high,
      temperature?.lethalHigh,
    ].filter(limit => limit !== undefined);
    expect(rising).toEqual([...rising].sort((a, b) => a - b));
    expect(new Set(rising).size).toBe(rising.length);
  });

  it.each(bundledCodes)('%s: stages stand in order of development', code => {
    const names = bundled(code).stages.map(({stage}) => stage);
    expect(names).toEqual([...names].sort(compareStages));
  });
});

describe('every species profile', () => {
  it.each(species)('%s: no rate rests on common practice', code => {
    const profile = taxon(code);
    for (const {source} of profile.stages)
      expect(['seen', 'computed', 'from-memory']).toContain(sourceOf(profile, source)?.provenance);
  });

  it.each(species)(
    '%s: every stage develops from 18 to 26 °C, faster in the warmth but for 5 % of scatter',
    code => {
      const profile = taxon(code);
      for (const {stage, rate} of profile.stages) {
        const {ratePerDay} = rateModel(rate);
        for (let t = 18; t < 26; t += 1)
          expect(ratePerDay(t + 1), `${stage} at ${t + 1} °C`).toBeGreaterThan(0.95 * ratePerDay(t));
        expect(ratePerDay(18)).toBeGreaterThan(0);
      }
    },
  );

  it.each(species)(
    '%s: nothing develops at the lower limit, nor at the upper one where the rate falls to it',
    code => {
      for (const {rate} of taxon(code).stages) {
        const {ratePerDay} = rateModel(rate);
        const {lowerC, upperC} = landmarksOf(rate);
        if (lowerC !== null) expect(ratePerDay(lowerC)).toBe(0);
        if (rate.kind !== 'degree-day' && upperC !== null) expect(ratePerDay(upperC)).toBe(0);
      }
    },
  );

  it.each(species)('%s: the animals can be kept where they develop', code => {
    const {limits, stages} = taxon(code);
    const {low, high} = limits.temperature!;
    for (const {rate} of stages) {
      const {ratePerDay} = rateModel(rate);
      expect(ratePerDay((low! + high!) / 2)).toBeGreaterThan(0);
    }
  });
});

describe('every group profile', () => {
  it.each(groups)(
    '%s: members vary more than animals of one of them, and few have a threshold near 20 °C',
    code => {
      const {variation} = group(code);
      expect(variation.lnDaysAt20.sd).toBeGreaterThan(variation.cv);
      expect(variation.lowerC.mean + 2.5 * variation.lowerC.sd).toBeLessThan(20);
    },
  );

  it.each(groups)('%s: says over which species it was computed, and that wild ones may be slower', code => {
    const profile = group(code);
    const source = sourceOf(profile, profile.variation.source)!;
    expect(source.provenance).toBe('computed');
    expect(`${source.citation} ${source.note}`).toMatch(/species/);
    expect(source.note).toMatch(/Direct development only/);
  });

  it.each(groups)('%s: numbers of instars rise, and shares are of the whole', code => {
    const {stages} = group(code);
    for (const {instars} of stages)
      if (instars !== undefined) expect(instars[0]).toBeLessThanOrEqual(instars[1]);
    expect(stages.reduce((sum, {share}) => sum + share, 0)).toBeCloseTo(1, 9);
  });
});

describe('groups of which nothing honest can be said in days', () => {
  it('wood borers, gall wasps, sawflies, spiders, dragonflies and their like are there, without dates', () => {
    for (const code of [
      'araneae',
      'orb-weavers',
      'odonata',
      'plecoptera',
      'wood-borers',
      'cynipidae',
      'sawflies',
    ])
      expect(undated).toContain(code);
  });

  it.each(undated)('%s: says why there is no date, as the end of a sentence', code => {
    const profile = bundled(code);
    if (!('undated' in profile)) throw new Error(code);
    expect(profile.undated.why).toMatch(/^[a-z].*\.$/);
    expect(sourceOf(profile, profile.undated.source)).toBeDefined();
  });
});

describe('the library is wide enough', () => {
  it('at least 35 species and 25 groups with dates, each kept in the unit its kind needs', () => {
    expect(species.length).toBeGreaterThanOrEqual(35);
    expect(groups.length).toBeGreaterThanOrEqual(25);
    for (const rearing of ['cage', 'aquarium', 'emergence-box'] as const)
      expect(species.filter(code => bundled(code).rearing.includes(rearing)).length).toBeGreaterThanOrEqual(
        8,
      );
    const arachnids = species.filter(code =>
      ['Trombidiformes', 'Mesostigmata'].includes(bundled(code).classification.order ?? ''),
    );
    expect(arachnids.length).toBeGreaterThanOrEqual(4);
  });

  it.each(bundledCodes.filter(code => code !== 'holometabola'))(
    '%s: says where it is met and what it eats, and whose knowledge that is',
    code => {
      const profile = bundled(code);
      expect(profile.met?.sat.length).toBeGreaterThan(0);
      expect(profile.met?.methods.length).toBeGreaterThan(0);
      expect(profile.food?.what).toBeDefined();
      expect(sourceOf(profile, profile.met?.source)).toBeDefined();
    },
  );
});
