import {describe, expect, it} from 'vitest';
import {command} from '../../src/commands/rate.ts';
import {run} from './in-process.ts';
import {asked, teneral} from './program.ts';

const BRIERE = '{"kind":"briere-1","a":7.86e-5,"lower":11.36,"upper":39.17}';

interface Rate {
  readonly ratePerDay: number;
  readonly days: number | null;
}

describe('rate', () => {
  it('answers one temperature with an object, several with a list, without a room', () => {
    const one = asked<Rate>(['rate', '--model', BRIERE, '--at', '25']);
    expect(one.ratePerDay).toBeCloseTo(0.10089, 5);
    expect(one.days).toBeCloseTo(1 / one.ratePerDay, 12);
    const several = asked<Rate[]>(['rate', '--model', BRIERE, '--at', '-5,25']);
    expect(several).toEqual([{ratePerDay: 0, days: null}, one]);
  });

  it('says where development begins, is fastest and ends, then the days', async () => {
    const {text} = await run(command, ['--model', BRIERE, '--at', '5,25']);
    expect(text.split('\n')).toEqual([
      'briere-1: nothing below 11.4 °C, fastest at 32.7 °C, nothing above 39.2 °C',
      '',
      '°C  rate per day            days',
      '────────────────────────────────',
      ' 5       0.00000  no development',
      '25       0.10089            9.91',
    ]);
  });

  it.each([
    ['a', '{"kind":"briere-1","a":-1,"lower":10,"upper":35}'],
    ['upper', '{"kind":"briere-1","a":1e-5,"lower":35,"upper":30}'],
    ['lower', '{"kind":"degree-day","lower":50,"upper":60,"degreeDays":100}'],
    ['delta', '{"kind":"lactin-1","rho":0.5,"upper":35,"delta":5}'],
    ['hh', '{"kind":"schoolfield","rho25":0.1,"ha":12000,"th":307}'],
    [
      'points.1.days',
      '{"kind":"table","points":[{"temperature":15,"days":9},{"temperature":20,"days":0}],"lower":5,"upper":30}',
    ],
    ['kind', '{"kind":"linear","lower":10}'],
    ['', '{"kind":'],
  ])('refuses with the field %j: %s', async (field, model) => {
    await expect(run(command, ['--model', model, '--at', '20'])).rejects.toMatchObject({
      name: 'Refusal',
      where: field === '' ? '--model' : `--model, field ${field}`,
    });
  });

  it('is refused in one line, and a temperature that is none is wrong usage', () => {
    const refused = teneral([
      'rate',
      '--model',
      '{"kind":"briere-1","a":1e-5,"lower":35,"upper":30}',
      '--at',
      '20',
    ]);
    expect(refused.status).toBe(1);
    expect(refused.err).toMatch(
      /^teneral: --model, field upper: 30 is not accepted\. Upper must be above the lower/,
    );
    expect(teneral(['rate', '--model', BRIERE, '--at', 'warm']).status).toBe(2);
  });
});
