// Recording on the screens: forms by keys, doubts that are confirmed, specimens, what is still open.
import {beforeAll, describe, expect, it} from 'vitest';
import {Doubt} from '../../src/work/doubts.ts';
import {type Driven, driven, roomWith, SMALL_ROOM} from './app-of.ts';

const out = {
  record: 'emergence',
  lot: '26-031-A',
  at: '2026-06-09T09:00:00+02:00',
  adults: [{sex: 'female', count: 1}],
  exuviae: {code: 'EX-1'},
};

let dir = '';
beforeAll(async () => {
  dir = await roomWith([...SMALL_ROOM, out]);
});

async function lotSheet(size?: {columns: number; rows: number}): Promise<Driven> {
  const driving = await driven(dir, size);
  driving.press('<tab><enter>');
  return driving;
}

describe('what happens to a lot', () => {
  it('is written down in a form: letters open it, typing fills it, enter writes it', async () => {
    const {press, shown} = await lotSheet();
    press('d');
    expect(shown()).toContain('l  animals died, escaped, were given away');
    press('l<delete>2<down>larva<down><right><down>leaves were wet');
    expect(shown()).toContain('leaves were wet_');
    expect(shown()).toContain('18 started = 17 alive + 1 emerged');
    expect(press('<enter>')).toEqual([
      {
        do: 'record',
        records: [
          {
            record: 'loss',
            lot: '26-031-A',
            count: 2,
            stage: 'larva',
            cause: 'escaped',
            note: 'leaves were wet',
          },
        ],
        said: '26-031-A: 2 escaped',
        about: ['26-031-A'],
        closes: true,
      },
    ]);
  });

  it('names the field that is still to be given, and goes there', async () => {
    const {press, app, shown} = await lotSheet();
    expect(press('ds<enter>')).toEqual([]);
    expect(shown()).toContain('new lot is still to be given.');
    expect(app().sheets.at(-1)).toMatchObject({kind: 'form', form: 'split', cursor: 0});
  });

  it('asks what became of those that a count does not account for, and writes the answer down with it', async () => {
    const {press, shown} = await lotSheet({columns: 100, rows: 30});
    press(`dc${'<delete>'.repeat(20)}larva=15<enter>`);
    expect(shown()).toContain('all of them is still to be given.');
    expect(shown()).toContain('2 fewer than are alive: were all looked at?');
    press('y<enter>');
    expect(shown()).toContain('the other 2 is still to be given.');
    expect(shown()).toContain('2 not accounted for: eaten by the others, not found, or miscounted?');
    expect(press('n<enter>')).toMatchObject([
      {
        do: 'record',
        records: [
          {record: 'loss', lot: '26-031-A', count: 2, cause: 'missing', note: 'not found'},
          {record: 'count', lot: '26-031-A', stages: {larva: 15}, complete: true},
        ],
      },
    ]);
  });

  it('can be corrected, with its reason', async () => {
    const {press} = await lotSheet();
    expect(press('dye9<down>adults.0.sex=male; condition=wings wet<down>looked again<enter>')).toEqual([
      {
        do: 'correct',
        entry: 'e9',
        changes: ['adults.0.sex=male', 'condition=wings wet'],
        reason: 'looked again',
        said: 'e9 put right',
      },
    ]);
  });
});

it('a field sample has the fields of its method, and what is usual stands there', async () => {
  const {press, shown} = await driven(dir, {columns: 100, rows: 40});
  press('ds26-040<down>y');
  expect(shown()).toMatch(/across +40/);
  expect(shown()).toMatch(/caught in +water-detergent/);
  press('lll');
  expect(shown()).toMatch(/lamp/);
  expect(shown()).not.toMatch(/across +40/);
  expect(shown()).toContain('lamps with ultraviolet light harm eyes');
});

it('a doubt is told, and the same key confirms it', async () => {
  const {press, send, shown} = await driven(dir);
  press('ds26-041<enter>');
  send({is: 'refused', refusal: new Doubt('46° N, 8° W lie outside Switzerland', '', 'Correct them.')});
  expect(shown()).toContain('46° N, 8° W lie outside Switzerland. Correct them.');
  expect(shown()).toContain('enter once more writes it down all the same');
  expect(press('<enter>')).toMatchObject([{records: [{record: 'sample', code: '26-041', sure: true}]}]);
  press('<down>');
  send({is: 'refused', refusal: new Doubt('46° N, 8° W lie outside Switzerland', '', 'Correct them.')});
  expect(press('<up>2<enter>')).toMatchObject([{records: [{code: '26-0412'}]}]);
  expect(press('<enter>')).toEqual([]);
});

it('a specimen shows what is kept of it and what is missing, and is identified from there', async () => {
  const {press, shown} = await driven(dir);
  press('!');
  expect(shown()).toContain('26-031-A-1');
  expect(shown()).toContain('not identified yet');
  press('<down><down><down><enter>');
  expect(shown()).toMatch(/what +adult, female/);
  expect(shown()).toMatch(/kept with it +exuviae EX-1/);
  expect(shown()).toContain('names it had: not yet identified');
  press('iPieris rapae<down>c<down><down><down><down><down>y');
  expect(press('<enter>')).toMatchObject([
    {
      records: [
        {
          record: 'identification',
          specimen: '26-031-A-1',
          taxon: 'Pieris rapae',
          qualifier: 'cf.',
          by: 'A. Keeper',
        },
        {record: 'revision', lot: '26-031-A', specimen: '26-031-A-1', taxon: 'Pieris rapae'},
      ],
    },
  ]);
});

it('an adult that turns out to be a parasitoid of its lot is put right with its name', async () => {
  const {press} = await driven(dir);
  press('!<down><down><down><enter>');
  press('iTachinidae<down><down><down><down><down><down><down>p');
  expect(press('<enter>')).toMatchObject([
    {
      records: [
        {record: 'void', reason: '26-031-A-1 is a parasitoid'},
        {record: 'parasitoid', lot: '26-031-A', codes: ['26-031-A-1'], taxon: 'Tachinidae'},
        {record: 'identification', specimen: '26-031-A-1', taxon: 'Tachinidae'},
      ],
    },
  ]);
});

it('adults that came out badly say so on their own line', async () => {
  const {press, shown} = await lotSheet();
  press('e2fmdda');
  expect(shown()).toContain('26-031-A-4, kept, battered');
  press('x');
  expect(press('puparium P-1 1<enter><enter>')).toMatchObject([
    {
      records: [
        {
          adults: [
            {sex: 'female', count: 2},
            {sex: 'male', count: 1, condition: 'battered', fate: 'kept'},
          ],
          exuviae: {code: 'P-1', what: 'puparium', association: 1},
        },
      ],
    },
  ]);
});
