import {describe, expect, it} from 'vitest';
import {civil} from '../../src/exchange/civil.ts';
import {shifted} from '../../src/work/shift.ts';

const vienna = civil('Europe/Vienna');

describe('shifted(value, days, civil)', () => {
  it('moves days and local instants, however deep they stand; the time of day stays, also across a clock change', () => {
    const season = {at: '2026-03-28T09:00', collected: {from: '2026-03-27'}, closed: [{from: '2026-12-31'}]};
    expect(shifted(season, 1, vienna)).toEqual({
      at: '2026-03-29T09:00',
      collected: {from: '2026-03-28'},
      closed: [{from: '2027-01-01'}],
    });
  });

  it('leaves everything else as it is: codes, numbers, texts that mention a day', () => {
    const record = {code: '26-031', count: 3, text: 'seen on 2026-03-28 at noon', off: false, none: null};
    expect(shifted(record, 7, vienna)).toEqual(record);
  });

  it('comes back when it is moved back', () => {
    const season = ['2024-02-29', '2026-06-12T08:40', '2026-06-12T08:40:30'];
    expect(shifted(shifted(season, 400, vienna), -400, vienna)).toEqual(season);
  });
});
