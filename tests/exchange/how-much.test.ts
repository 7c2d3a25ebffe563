// How much a rule takes, written and read back.
import {describe, expect, it} from 'vitest';
import {allStartRules} from '../../src/care/start-rules.ts';
import {howMuchText, readHowMuch} from '../../src/exchange/how-much.ts';

describe('readHowMuch(text)', () => {
  it.each([
    ['1 prey each', {each: 1, of: 'prey'}],
    ['0,12 mg food each a day', {each: 0.12, of: 'mg food', per: 'day'}],
    ['1g meat each in all', {each: 1, of: 'g meat', per: 'life'}],
    [
      'larva-1 5.5, larva-4 46, larva 24 aphids each a day',
      {each: {'larva-1': 5.5, 'larva-4': 46, larva: 24}, of: 'aphids', per: 'day'},
    ],
    ['nymph-2 3 flies each', {each: {'nymph-2': 3}, of: 'flies'}],
    ['10 mL medium', {whole: 10, of: 'mL medium'}],
    ['10 mL medium, however many there are', {whole: 10, of: 'mL medium'}],
    ['25 % of the water', {share: 0.25}],
    ['25%', {share: 0.25}],
    ['none', null],
  ])('reads "%s"', (text, amount) => {
    expect(readHowMuch(text)).toEqual(amount);
  });

  it.each([
    '',
    'much',
    '46',
    'aphids each',
    '0 aphids each',
    '-1 aphids each',
    'pupa 3 aphids each',
    'larva-1 5, 46 aphids each',
    'larva-1 5 aphids, larva-2 6 leaves each',
    'larva-1 5, larva-2 6 aphids',
    '1.2.3 mg food each',
  ])('does not read "%s"', text => {
    expect(readHowMuch(text)).toBeUndefined();
  });

  it('reads back every amount of the start values as it is written', () => {
    const amounts = allStartRules.flatMap(({amount}) => amount ?? []);
    expect(amounts.length).toBeGreaterThan(10);
    for (const amount of amounts) {
      const read = readHowMuch(howMuchText(amount));
      if ('share' in amount) expect(read).toEqual({share: expect.closeTo(amount.share, 4)});
      else expect(read).toEqual(amount);
    }
  });
});
