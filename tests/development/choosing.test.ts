// What is suggested for animals of which this or that is known, over the bundled profiles.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {type Clues, suggest} from '../../src/development/choosing.ts';
import {SAT} from '../../src/records/where-it-sat.ts';
import {bundled, bundledCodes} from '../profiles/bundled.ts';

const profiles = bundledCodes.map(bundled);
const weights = (clues: Clues) =>
  Object.fromEntries(suggest(clues, profiles).map(({profile, weight}) => [profile, weight]));
const first = (clues: Clues) => suggest(clues, profiles)[0]?.profile;

describe('suggest', () => {
  it('knows the order of a family that no profile names, and of a name in plain words', () => {
    for (const taxon of ['Geometridae', 'a winter moth']) {
      expect(first({taxon})).toBe('lepidoptera');
      expect(weights({taxon})).not.toHaveProperty('diptera');
    }
  });

  it('says nothing where nothing is known', () => {
    expect(suggest({}, profiles)).toEqual([]);
    expect(suggest({taxon: undefined}, profiles)).toEqual([]);
  });

  it.each<[string, Clues, string]>([
    ['an order is that order', {taxon: 'Lepidoptera'}, 'lepidoptera'],
    ['a family is that family', {taxon: 'Noctuidae'}, 'noctuidae'],
    ['the trade’s word for it will do', {taxon: 'a maggot', sat: 'carrion'}, 'carrion-flies'],
    ['a mine in a leaf', {sat: 'mine'}, 'leaf-miners'],
    ['a mine on tomato, by its host and size', {sat: 'mine', host: 'Solanum', lengthMm: 7}, 'tuta-absoluta'],
    ['nymphs of a stream', {sat: 'running-water', stages: ['nymph']}, 'plecoptera'],
    ['larvae of a stream', {sat: 'running-water', stages: ['larva-5']}, 'net-spinning-caddisflies'],
    ['under bark of spruce', {sat: 'bark', host: 'Picea abies', taxon: 'Coleoptera'}, 'ips-typographus'],
    ['galls, by the method alone', {method: 'gall'}, 'cynipidae'],
    ['a web with its maker', {sat: 'web', stages: ['nymph-3'], lengthMm: 9}, 'orb-weavers'],
    ['a name written out', {taxon: 'Cloeon dipterum'}, 'cloeon-dipterum'],
  ])('%s', (_, clues, expected) => {
    expect(first(clues)).toBe(expected);
  });

  it('narrows as more is known: host, then place, then size each raise the whites of cabbage', () => {
    const whites = (clues: Clues) =>
      Object.entries(weights(clues)).reduce(
        (sum, [code, w]) => sum + (code.startsWith('pieris-') ? w : 0),
        0,
      );
    const steps: Clues[] = [
      {taxon: 'Lepidoptera'},
      {taxon: 'Lepidoptera', host: 'Brassica oleracea'},
      {taxon: 'Lepidoptera', host: 'Brassica oleracea', sat: 'leaf'},
      {taxon: 'Lepidoptera', host: 'Brassica oleracea', sat: 'leaf', lengthMm: 24},
    ];
    const shares = steps.map(whites);
    expect(shares).toEqual([...shares].sort((a, b) => a - b));
    expect(shares[0]).toBeLessThan(0.05);
    expect(shares[3]).toBeGreaterThan(0.5);
  });

  it('leaves single kinds no more than three quarters, for most kinds have no profile', () => {
    const found = suggest({taxon: 'Pieris', host: 'Brassica'}, profiles);
    const single = found.filter(({rank}) => rank === 'species').reduce((sum, {weight}) => sum + weight, 0);
    expect(single).toBeLessThanOrEqual(0.76);
    expect(found.map(({profile}) => profile)).toContain('lepidoptera');
  });

  it('excludes other orders than the one named, and what lacks the stage', () => {
    for (const {profile} of suggest({taxon: 'Diptera', sat: 'leaf'}, profiles))
      expect(['Diptera', undefined]).toContain(bundled(profile).classification.order);
    for (const {profile} of suggest({stages: ['nymph-2'], sat: 'leaf'}, profiles))
      expect(bundled(profile).stages.some(({stage}) => stage.startsWith('nymph'))).toBe(true);
  });

  it('says why in words, and which have no date', () => {
    const [wasps] = suggest({method: 'gall', taxon: 'Cynipidae', month: 10, stages: ['larva']}, profiles);
    expect(wasps).toMatchObject({profile: 'cynipidae', dated: false});
    expect(wasps!.why).toEqual([
      'the name fits',
      'met in or on gall',
      'nearly all found at this time rest till spring',
    ]);
  });

  it('weights are shares of one, never more than six, whatever is known', () => {
    fc.assert(
      fc.property(
        fc.record(
          {
            sat: fc.constantFrom(...SAT),
            lengthMm: fc.double({min: 0.2, max: 120, noNaN: true}),
            taxon: fc.constantFrom('Lepidoptera', 'Coleoptera', 'Diptera', 'Araneae', 'bug', 'what is this'),
            host: fc.constantFrom('Brassica', 'Picea abies', 'Quercus', 'Aphis on Vicia'),
            month: fc.integer({min: 1, max: 12}),
            method: fc.constantFrom('search', 'gall', 'dip-net', 'other'),
          },
          {requiredKeys: []},
        ),
        clues => {
          const found = suggest(clues, profiles);
          expect(found.length).toBeLessThanOrEqual(6);
          if (found.length > 0) expect(found.reduce((sum, {weight}) => sum + weight, 0)).toBeCloseTo(1, 9);
          for (const {weight} of found) expect(weight).toBeGreaterThan(0);
        },
      ),
      {numRuns: 60},
    );
  });
});
