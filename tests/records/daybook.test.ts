import {expect, test} from 'vitest';
import {sentenceOf} from '../../src/records/daybook.ts';
import {day, lot, recordOf, sample, unit, type Written} from './daybook-of.ts';

const A = {lot: 'A', at: day(1)};

test.each<readonly [Written, string]>([
  [
    {...A, record: 'count', stages: {'larva-5': 3, pupa: 9}},
    '9 pupae and 3 larvae of the fifth instar counted',
  ],
  [{...A, record: 'count', stages: {pupa: 1}, complete: true}, '1 pupa counted, all there are'],
  [{...A, record: 'count', stages: {egg: 0}}, 'No animals counted'],
  [{...A, record: 'check'}, 'Looked for adults, none out'],
  [{...A, record: 'hatch', count: 30}, '30 hatched'],
  [
    {...A, record: 'loss', stage: 'larva-2', count: 2, cause: 'dead', note: 'limp'},
    '2 larvae of the second instar dead: limp',
  ],
  [
    {...A, record: 'voucher', stage: 'nymph-12', specimen: 'a-v1'},
    '1 nymph of the 12th instar preserved, a-v1',
  ],
  [{...A, record: 'split', into: 'B', stages: {pupa: 4}}, '4 pupae split off as lot B'],
  [
    {
      ...A,
      record: 'emergence',
      adults: [
        {sex: 'female', count: 2},
        {sex: 'male', count: 1},
      ],
      fate: 'killed',
    },
    '2 female adults and 1 male adult emerged, killed',
  ],
  [
    {...A, record: 'parasitoid', count: 31, taxon: 'Braconidae', hostStage: 'larva-5'},
    '31 parasitoids (Braconidae) out of 1 larva of the fifth instar',
  ],
  [
    {record: 'identification', specimen: 'a-1', taxon: 'Pieris rapae', by: 'I. Example', on: '2031-05-02'},
    'Specimen a-1 identified as Pieris rapae (det. I. Example, 2031-05-02)',
  ],
  [
    lot({'larva-4': 2}, {taxon: 'Pieris sp.'}),
    'Lot A begun from sample S1 in unit C1: 2 larvae of the fourth instar, Pieris sp.',
  ],
  [sample(), 'Sample S1 collected 2031-04-29 to 2031-04-30 (search)'],
  [unit('c1'), 'Unit c1 (cage) at rack A/1'],
  [
    {record: 'reading', logger: 'l1', at: day(1), temperature: 21.4, humidity: 62},
    'Logger l1 reads 21.4 °C, 62 %RH',
  ],
  [
    {record: 'extremes', logger: 'm', from: day(0), to: day(1), minimum: 17, maximum: 25, reset: false},
    'Logger m held 17 to 25 °C, not reset',
  ],
  [
    {record: 'care', unit: 'C1', lot: 'A', task: 'feed', seen: {mould: false}},
    'Feed done in C1 for lot A; mould no',
  ],
  [{record: 'void', entry: 'e7', reason: 'misread'}, 'Entry e7 void: misread'],
])('%o reads "%s"', (written, sentence) => {
  expect(sentenceOf(recordOf(written))).toBe(sentence);
});
