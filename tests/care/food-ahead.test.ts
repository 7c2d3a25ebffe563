// The food of the days ahead, added up.
import fc from 'fast-check';
import {describe, expect, it} from 'vitest';
import {type Feeding, type FeedingDay, foodAhead} from '../../src/care/food-ahead.ts';

const once = {estimated: false, atLeast: false, inAll: false};
const feeding = (unit: string, lot: string, amount: number, of: string, more: object = {}): Feeding => ({
  unit,
  lot,
  food: {amount, of, ...once, ...more},
  grown: null,
  plant: null,
});
const on = (day: string, ...feedings: Feeding[]): FeedingDay => ({day, open: true, feedings});
const closed = (day: string, ...feedings: Feeding[]): FeedingDay => ({day, open: false, feedings});

describe('foodAhead(days)', () => {
  it('adds up each food by day and together, with the units that take it', () => {
    const {foods} = foodAhead([
      on('2031-05-02', feeding('C2', 'B', 5, 'aphids'), feeding('C10', 'A', 7, 'aphids')),
      on('2031-05-03', feeding('T1', 'C', 2.4, 'mg food')),
      on('2031-05-04', feeding('C2', 'B', 6, 'aphids')),
    ]);
    expect(foods).toMatchObject([
      {of: 'aphids', amount: 18, perDay: {'2031-05-02': 12, '2031-05-04': 6}, units: ['C2', 'C10']},
      {of: 'mg food', amount: 2.4, perDay: {'2031-05-03': 2.4}, units: ['T1']},
    ]);
  });

  it('comes to the same as adding every feeding to its food', () => {
    const days = fc.array(
      fc.array(
        fc.record({
          unit: fc.constantFrom('C1', 'C2', 'T1'),
          amount: fc.integer({min: 1, max: 500}),
          of: fc.constantFrom('aphids', 'mg food', 'cm² leaf'),
          plant: fc.constantFrom(null, 'Urtica dioica', 'Salix caprea'),
        }),
        {maxLength: 8},
      ),
      {minLength: 1, maxLength: 14},
    );
    fc.assert(
      fc.property(days, given => {
        const ahead = given.map((feedings, i) =>
          on(
            `2031-05-${String(i + 1).padStart(2, '0')}`,
            ...feedings.map(({unit, amount, of, plant}) => ({...feeding(unit, unit, amount, of), plant})),
          ),
        );
        const sums = new Map<string, number>();
        for (const {of, plant, amount} of given.flat())
          sums.set(`${of} ${plant}`, (sums.get(`${of} ${plant}`) ?? 0) + amount);
        const {foods} = foodAhead(ahead);
        expect(new Map(foods.map(food => [`${food.of} ${food.plant}`, food.amount]))).toEqual(sums);
        for (const {perDay, amount} of foods)
          expect(Object.values(perDay).reduce((all, one) => all + one, 0)).toBe(amount);
      }),
    );
  });

  it('counts what is for a life once for each lot, and on no day', () => {
    const meat = (lot: string, amount: number) => feeding('C1', lot, amount, 'g meat', {inAll: true});
    const {foods, beforeClosed} = foodAhead([
      on('2031-05-02', meat('A', 40), meat('B', 10)),
      closed('2031-05-03', meat('A', 40)),
      on('2031-05-04', meat('A', 40), meat('B', 10)),
    ]);
    expect(foods).toMatchObject([{amount: 50, inAll: true, perDay: {}}]);
    expect(beforeClosed).toEqual([]);
  });

  it('says what must be there before closed days: what their visits take, on the last open day', () => {
    const {beforeClosed} = foodAhead([
      closed('2031-05-01', feeding('C1', 'A', 3, 'aphids')),
      on('2031-05-02', feeding('C1', 'A', 10, 'aphids')),
      closed('2031-05-03', feeding('C1', 'A', 11, 'aphids')),
      closed('2031-05-04', feeding('C1', 'A', 12, 'aphids'), feeding('T1', 'B', 2, 'mg food')),
      on('2031-05-05', feeding('C1', 'A', 13, 'aphids')),
      closed('2031-05-06'),
    ]);
    expect(beforeClosed).toMatchObject([
      {by: '2031-05-01', from: '2031-05-01', to: '2031-05-01', foods: [{amount: 3}]},
      {
        by: '2031-05-02',
        from: '2031-05-03',
        to: '2031-05-04',
        foods: [
          {amount: 23, of: 'aphids'},
          {amount: 2, of: 'mg food'},
        ],
      },
    ]);
  });

  it('says which sums rest on estimates, and who is fed by eye', () => {
    const eye: Feeding = {unit: 'T2', lot: 'C', food: null, grown: null, plant: null};
    const {foods, byEye} = foodAhead([
      on(
        '2031-05-02',
        feeding('C1', 'A', 1, 'aphids'),
        feeding('C2', 'B', 2, 'aphids', {estimated: true}),
        eye,
      ),
      on('2031-05-03', feeding('C1', 'A', 1, 'aphids', {atLeast: true}), eye),
    ]);
    expect(foods).toMatchObject([{amount: 4, estimated: true, atLeast: true}]);
    expect(byEye).toEqual([{unit: 'T2', lot: 'C'}]);
  });
});
