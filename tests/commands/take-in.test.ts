// Spreadsheets brought in with teneral apply: columns, refusals by row and column, all or nothing, safe to repeat.
import {writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeEach, describe, expect, it} from 'vitest';
import {stateOf} from './folder-state.ts';
import {newRoom, type RoomAt, type Said, temporaryFolder} from './program.ts';

const NOW = '2026-06-12T09:00Z';
const furnished = [
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
  {record: 'sample', code: 'S', method: 'search', collected: {from: '2026-05-30'}},
  {record: 'lot', code: 'A', sample: 'S', unit: 'C1', stages: {pupa: 4}, at: '2026-06-01T09:00Z'},
];

let room: RoomAt;
let untouched: ReturnType<typeof stateOf> | undefined;
/** A new room wherever the test before wrote into the old one. */
beforeEach(() => {
  if (untouched !== undefined && JSON.stringify(stateOf(room.dir)) === JSON.stringify(untouched)) return;
  room = newRoom();
  room.apply(NOW, furnished);
  untouched = stateOf(room.dir);
});

function sheet(...lines: readonly string[]): string {
  const file = join(temporaryFolder(), 'catch.csv');
  writeFileSync(file, lines.join('\r\n'));
  return file;
}

const samples = (file: string, ...options: string[]): Said =>
  room.at(NOW, 'apply', file, '--as', 'sample', ...options);

const CATCH = ['Trap no;Emptied;Site;Lat;Lon', 'T1;3.6.2026;"Mill; pond";46,21;-21,30', 'T2;4.vi.2026;Fen;;'];
const COLUMNS = [
  ['code = Trap no'],
  ['collectedFrom = Emptied | d.m.y'],
  ['locality = site'],
  ['latitude = Lat'],
  ['longitude = #5'],
  ['method := Yellow pan'],
].flatMap(([line]) => ['--column', line!]);

describe('a spreadsheet of field samples', () => {
  it('is taken in by the columns that are named, decimal commas, roman months and constants too', () => {
    expect(samples(sheet(...CATCH), ...COLUMNS)).toMatchObject({status: 0, err: ''});
    const listed = room.ask<{code: string}[]>(NOW, 'list', 'samples');
    expect(listed.find(({code}) => code === 'T1')).toMatchObject({
      method: 'yellow-pan',
      collected: {from: '2026-06-03'},
      locality: 'Mill; pond',
    });
    const [entry] = room.ask<{record: object}[]>(NOW, 'daybook', 'T1');
    expect(entry!.record).toMatchObject({place: {latitude: 46.21, longitude: -21.3}});
  });

  it('takes its lines from a mapping file, remarks passed over', () => {
    const mapping = join(temporaryFolder(), 'traps.txt');
    const lines = COLUMNS.filter(word => word !== '--column');
    writeFileSync(mapping, ['# our traps', '', ...lines].join('\n'));
    expect(samples(sheet(...CATCH), '--mapping', mapping).status).toBe(0);
  });

  it('is checked by a dry run and changes nothing', () => {
    const before = stateOf(room.dir);
    const {status, out} = samples(sheet(...CATCH), ...COLUMNS, '--dry-run', '--json');
    expect(status).toBe(0);
    expect(JSON.parse(out)).toMatchObject({
      rows: 2,
      dryRun: true,
      applied: 2,
      passedOver: 0,
      entries: [],
      unused: [],
      columns: expect.arrayContaining([
        {field: 'locality', column: 'Site'},
        {field: 'method', column: null},
      ]),
    });
    expect(stateOf(room.dir)).toEqual(before);
  });

  it('passes over rows that were taken in before, and takes in those that were added', () => {
    samples(sheet(...CATCH), ...COLUMNS);
    const again = samples(sheet(...CATCH, 'T3;5.6.2026;Fen;;'), ...COLUMNS, '--json');
    expect(JSON.parse(again.out)).toMatchObject({applied: 1, passedOver: 2});
  });

  it.each([
    [
      'a day whose order nobody said',
      ['T1;3.6.2026;x;;'],
      ['code = Trap no', 'collectedFrom = Emptied', 'method := band'],
      /row 2, column "Emptied": "3.6.2026" is no day/,
    ],
    [
      'a day that is none',
      ['T1;31.6.2026;x;;'],
      ['code = Trap no', 'collectedFrom = Emptied | d.m.y', 'method := band'],
      /row 2, column "Emptied"/,
    ],
    [
      'a number with a unit',
      ['T1;3.6.2026;x;46 N;1'],
      COLUMNS.filter(word => word !== '--column'),
      /row 2, column "Lat": "46 N" is no number/,
    ],
    [
      'a latitude out of range',
      ['T1;3.6.2026;x;146;1'],
      COLUMNS.filter(word => word !== '--column'),
      /row 2, column "Lat": 146 is not accepted/,
    ],
    [
      'a method that is none',
      ['T1;3.6.2026;x;;'],
      ['code = Trap no', 'collectedFrom = Emptied | d.m.y', 'method = Site'],
      /row 2, column "Site": "x" is not accepted/,
    ],
    [
      'a code in use',
      ['T1;3.6.2026;x;;', 'S;3.6.2026;x;;'],
      COLUMNS.filter(word => word !== '--column'),
      /row 3, column "Trap no": the code S is in use already/,
    ],
    [
      'a code twice',
      ['T1;3.6.2026;x;;', 'T1;4.6.2026;x;;'],
      COLUMNS.filter(word => word !== '--column'),
      /row 3, column "Trap no": the code T1 is in use already/,
    ],
    [
      'a heading that is not there',
      ['T1;3.6.2026;x;;'],
      ['code = Trap number', 'method := band'],
      /there is no column "Trap number"/,
    ],
    [
      'a field that is not there',
      ['T1;3.6.2026;x;;'],
      ['cod = Trap no'],
      /there is no field "cod".*Nearest is code/,
    ],
    ['a line that gives nothing', ['T1;3.6.2026;x;;'], ['code'], /"code" gives no field/],
    [
      'a step that is none',
      ['T1;3.6.2026;x;;'],
      ['code = Trap no | upside down'],
      /"upside down" is nothing that can be done/,
    ],
    ['a field without a column', ['T1;3.6.2026;x;;'], ['code = Trap no'], /no column gives the method/],
  ])('refuses %s, naming where, and takes in nothing', (_, rows, lines, said) => {
    const before = stateOf(room.dir);
    const {status, err} = samples(sheet(CATCH[0]!, ...rows), ...lines.flatMap(line => ['--column', line]));
    expect(err).toMatch(said);
    expect(err.trim().split('\n')).toHaveLength(1);
    expect(status).toBe(1);
    expect(stateOf(room.dir)).toEqual(before);
  });
});

describe('a spreadsheet of specimens', () => {
  const specimens = (file: string, ...options: string[]) =>
    room.at(NOW, 'apply', file, '--as', 'specimen', ...options);
  const HEADING = 'code,kind,lot,at,sex,taxon,identifiedBy,identifiedOn,preparation,store';

  it('becomes emergences, parasitoids and vouchers with their names and where they are kept', () => {
    const file = sheet(
      HEADING,
      'x1,,A,2026-06-10T08:00,F,Pieris rapae,B. Namer,2026-06-11,Pinned,drawer 3',
      'x2,parasitoid,A,2026-06-11T08:00,,Braconidae,,,,',
      'x3,voucher,A,2026-06-11T08:00,,,,,fluid,shelf 1',
    );
    const {status, err} = specimens(file, '--column', 'sex = sex | F > female | M > male');
    expect(err).toBe('');
    expect(status).toBe(0);
    const listed = room.ask<{code: string}[]>(NOW, 'list', 'specimens');
    expect(listed.map(({code}) => code)).toEqual(['x1', 'x2', 'x3']);
    expect(listed[0]).toMatchObject({kind: 'adult', sex: 'female', taxon: 'Pieris rapae'});
    const [balance] = room.ask<object[]>(NOW, 'balance', 'A');
    expect(balance).toMatchObject({emerged: 1, parasitised: 1, preserved: 1, alive: {pupa: 1}});
    const again = specimens(file, '--column', 'sex = sex | F > female | M > male', '--json');
    expect(JSON.parse(again.out)).toMatchObject({applied: 0, passedOver: 6});
  });

  it('keeps the balance: more adults than pupae are refused with the sum', () => {
    const rows = Array.from({length: 5}, (_, i) => `y${i},,A,2026-06-10T08:00,,,,,,`);
    const before = stateOf(room.dir);
    const {status, err} = specimens(sheet(HEADING, ...rows));
    expect(status).toBe(1);
    expect(err).toMatch(/row 6/);
    expect(stateOf(room.dir)).toEqual(before);
  });

  it('names the column of a lot that is not there, and of a sex that is none', () => {
    expect(specimens(sheet(HEADING, 'x1,,B,2026-06-10T08:00,,,,,,')).err).toMatch(
      /row 2, column "lot": there is no lot B/,
    );
    expect(specimens(sheet(HEADING, 'x1,,A,2026-06-10T08:00,F,,,,,')).err).toMatch(
      /row 2, column "sex": "f" is not accepted/,
    );
  });
});

describe('tables written out', () => {
  it('are read in again by another room, the samples the same', () => {
    samples(sheet(...CATCH), ...COLUMNS);
    const folder = join(temporaryFolder(), 'tables');
    expect(room.at(NOW, 'export', 'csv', '--out', folder).status).toBe(0);
    const other = newRoom();
    expect(other.at(NOW, 'apply', join(folder, 'samples.csv'), '--as', 'sample')).toMatchObject({
      status: 0,
      err: '',
    });
    const bare = (at: RoomAt) =>
      at.ask<{code: string; lots: unknown}[]>(NOW, 'list', 'samples').map(row => ({...row, lots: []}));
    expect(bare(other)).toEqual(bare(room));
  });
});
