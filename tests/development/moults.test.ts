// What is said of animals of which no date can be given: how many moults they have to go.
import {describe, expect, it} from 'vitest';
import {moultsToGo} from '../../src/development/moults.ts';
import {bundled} from '../profiles/bundled.ts';

const odonata = [{profile: bundled('odonata'), weight: 1}];
const classes = (stage: string) => [{atDays: 0, stage, progress: [0, 1] as const, count: 3, oneBrood: false}];
const counted = (stages: Record<string, number>) =>
  ({kind: 'count', atDays: 9, stages, complete: true, entry: 'e1'}) as const;

describe('moultsToGo', () => {
  it('counts from the stage they began in: 10 to 16 instars, the eighth has 3 to 9 to go', () => {
    const [said] = moultsToGo(odonata, classes('nymph-8'), []);
    expect(said).toMatch(/get no date: growth is known by temperature/);
    expect(said).toMatch(/last seen in instar 8, so 3 to 9 moults to the adult\.$/);
  });

  it('and from the furthest that was counted last', () => {
    const [said] = moultsToGo(odonata, classes('nymph-8'), [
      counted({'nymph-9': 2, 'nymph-12': 1, 'nymph-13': 0}),
    ]);
    expect(said).toMatch(/instar 12, so 1 to 5 moults to the adult/);
  });

  it('says so where more instars are seen than known', () => {
    const [said] = moultsToGo(odonata, classes('nymph-17'), []);
    expect(said).toMatch(/more instars than the 10 to 16 instars known are seen already/);
  });

  it('says that dates hold for the others where there are others', () => {
    const both = [...odonata, {profile: bundled('ephemeroptera'), weight: 1}];
    expect(moultsToGo(both, classes('nymph-8'), [])[0]).toMatch(/hold for the other candidates alone/);
  });

  it('is silent about candidates with dates, and about those without weight', () => {
    expect(moultsToGo([{profile: bundled('lepidoptera'), weight: 1}], classes('larva'), [])).toEqual([]);
    expect(moultsToGo([{profile: bundled('odonata'), weight: 0}], classes('nymph-8'), [])).toEqual([]);
  });
});
