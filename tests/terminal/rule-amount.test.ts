// How much a rule takes, typed on its sheet as it is shown there.
import {describe, expect, test} from 'vitest';
import {allStartRules} from '../../src/care/start-rules.ts';
import {recorded} from '../../src/terminal/ask/recorded.ts';
import type {View} from '../../src/terminal/sheet.ts';

const rule = allStartRules.find(({code}) => code === 'feed-coccinellidae')!;
const typed = (text: string) => recorded({for: 'amount', rule}, text, {} as View);

describe('how much a rule takes', () => {
  test('is written into the whole rule, or taken out of it', () => {
    expect(typed('larva-1 6, larva-4 50 aphids each a day').effects?.[0]).toMatchObject({
      do: 'record',
      records: [
        {
          ...{record: 'rule', code: rule.code, every: rule.every},
          amount: {each: {'larva-1': 6, 'larva-4': 50}, of: 'aphids', per: 'day'},
        },
      ],
    });
    const [effect] = typed('none').effects ?? [];
    expect(effect).toMatchObject({do: 'record', records: [{record: 'rule', code: rule.code}]});
    expect(effect?.do === 'record' && effect.records[0]).not.toHaveProperty('amount.of');
  });

  test('cannot be read from less than a number and a food, and says how to write it', () => {
    expect(typed('plenty')).toMatchObject({say: expect.stringContaining('46 aphids each a day')});
  });
});
