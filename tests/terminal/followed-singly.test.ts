// Animals followed by themselves, on the screens alone: what comes out of each vial. The built program in a pseudo
// terminal, and its frames. Everything is invented.
import {beforeEach, describe, expect, it} from 'vitest';
import {Doubt} from '../../src/work/doubts.ts';
import {newRoom, type RoomAt} from '../commands/program.ts';
import {type Driven, driven, roomWith} from './app-of.ts';
import {KEYS, openScreen, type Screen} from './screen.ts';

const NOW = '2026-06-12T08:40';
const RECORDS = [
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', setPoints: {constant: 22}},
  {record: 'unit', code: 'T1', type: 'aquarium', place: 'bench/1'},
  {record: 'sample', code: 'S1', collected: {from: '2026-06-07'}, method: 'beating'},
  {
    ...{record: 'lot', code: 'S1-A', sample: 'S1', unit: 'C1', at: '2026-06-08T09:00:00+02:00'},
    ...{taxon: 'Lepidoptera', stages: {larva: 12}, candidates: [{profile: 'lepidoptera'}]},
  },
  {
    ...{record: 'lot', code: 'S1-M', sample: 'S1', unit: 'T1', at: '2026-06-08T09:00:00+02:00'},
    ...{taxon: 'Ephemeroptera', stages: {nymph: 8}},
  },
  ...['02', '07'].map(animal => ({
    ...{record: 'count', lot: 'S1-A', animal, at: '2026-06-08T10:00:00+02:00', stages: {larva: 1}},
    complete: false,
  })),
];

describe('in a pseudo terminal', () => {
  let room: RoomAt;
  let screen: Screen;
  beforeEach(async () => {
    room = newRoom();
    expect(room.apply('2026-06-08T10:00', RECORDS).err).toBe('');
    screen = openScreen(['--room', room.dir, '--now', NOW], {env: {NO_COLOR: '1'}});
    await screen.waitFor('to do');
  });

  /** The form for what came out of a lot, by way of find. */
  async function adultsOf(lot: string): Promise<void> {
    screen.press('/');
    await screen.waitFor('find:');
    screen.press(`${lot}\r`);
    await screen.waitFor(`${lot} ·`);
    screen.press('e');
    await screen.waitFor(`adults of ${lot}`);
  }

  it('31 out of one vial are asked about and written down at once as parasitoids, with remains and cocoon', async () => {
    await adultsOf('S1-A');
    expect(screen.text()).toContain('n names one of 02 07');
    screen.press('n07\r31u\r');
    await screen.waitFor('31 from one host: parasitoid?');
    screen.press('y');
    await screen.waitFor('parasitoids   31, S1-A-p1 to S1-A-p31');
    screen.press('ro');
    await screen.waitFor(/cocoon +S1-A-p1b/);
    screen.press('\r');
    await screen.waitFor('S1-A-p1 to S1-A-p31 written down');
    const written = room.ask<{record: object; voided: boolean}[]>(NOW, 'daybook', 'S1-A').slice(3);
    expect(written).toMatchObject([
      {
        voided: false,
        record: {
          ...{record: 'parasitoid', animal: '07', count: 31, hosts: 1},
          remains: {code: 'S1-A-p1a', what: 'host-remains'},
          cocoon: {code: 'S1-A-p1b', what: 'cocoon'},
        },
      },
    ]);
    expect(room.at(NOW, 'balance', 'S1-A').out).toContain('12 started = 11 alive + 1 parasitised');
    screen.press('\u0003');
    await screen.exited;
  });

  it('a fly out of a caterpillar’s vial is asked about before anything is written', async () => {
    await adultsOf('S1-A');
    screen.press('n02\rifly\ru\r');
    await screen.waitFor('What is it?  p parasitoid  s scavenger  m mistake');
    expect(screen.text()).toContain('fly (Diptera) differs from the order of lot S1-A (Lepidoptera)');
    expect(room.ask<unknown[]>(NOW, 'list', 'specimens')).toEqual([]);
    screen.press('p');
    await screen.waitFor('parasitoids   1 fly, S1-A-p1');
    screen.press('\r');
    await screen.waitFor('S1-A-p1 written down');
    expect(room.ask<object[]>(NOW, 'daybook', 'S1-A').slice(3)).toMatchObject([
      {record: {record: 'parasitoid', animal: '02', taxon: 'fly', count: 1, hosts: 1}},
    ]);
    screen.press('\u0003');
    await screen.exited;
  });

  it('a mayfly is followed from its vial to the imago, one specimen with both skins', async () => {
    await adultsOf('S1-M');
    screen.press('n05\rsfkA-0311\rx');
    await screen.waitFor('A-0311a 1_');
    screen.press('\r');
    await screen.waitFor(/kept with it +exuviae A-0311a/);
    screen.press('w2026-06-01 06:00\r\r');
    await screen.waitFor('is before the animals of lot S1-M were collected');
    screen.press('w2026-06-12 06:40\r\r');
    await screen.waitFor('Move A-0311 dry, airy and upright');
    screen.press(KEYS.escape);
    await screen.waitFor('S1-M ·');
    screen.press('/');
    await screen.waitFor('find:');
    screen.press('A-0311\r');
    await screen.waitFor('A-0311 ·');
    screen.press('d');
    await screen.waitFor('a subimago has moulted');
    screen.press('m');
    await screen.waitFor('A-0311b');
    screen.press('\r');
    await screen.waitFor('A-0311 is an imago');
    expect(room.ask<object[]>(NOW, 'balance', 'S1-M')).toMatchObject([{emerged: 1, alive: {nymph: 7}}]);
    expect(room.ask<object[]>(NOW, 'daybook', 'A-0311')).toMatchObject([
      {
        record: {
          record: 'emergence',
          animal: '05',
          as: 'subimago',
          exuviae: {code: 'A-0311a', association: 1},
        },
      },
      {record: {record: 'imago', specimen: 'A-0311', exuviae: {code: 'A-0311b', association: 1}}},
    ]);
    screen.press('\u0003');
    await screen.exited;
  });
});

describe('the form', () => {
  const STRANGE = new Doubt('a fly differs: parasitoid, scavenger or mistake?', '', '', true);

  /** A name that was doubted, with the question open. */
  async function doubted(keys = 'ifly<enter>2f<enter>'): Promise<Driven> {
    const screens = await driven(await roomWith(RECORDS));
    const {sheets} = screens.app();
    Object.assign(screens.app(), {sheets: [...sheets, {kind: 'lot', code: 'S1-A', scroll: 0}]});
    screens.press(`e${keys}`);
    screens.send({is: 'refused', refusal: STRANGE});
    return screens;
  }

  it('names each adult, under the codes that are written with them', async () => {
    const screens = await doubted('imoth<enter>2f');
    screens.press('<escape>');
    expect(screens.press('<enter>')).toMatchObject([
      {
        do: 'record',
        records: [
          {record: 'emergence', codes: ['S1-A-1', 'S1-A-2']},
          {record: 'identification', specimen: 'S1-A-1', taxon: 'moth'},
          {record: 'identification', specimen: 'S1-A-2', taxon: 'moth'},
        ],
      },
    ]);
  });

  it('makes scavengers specimens of the field sample, and leaves the animals alive', async () => {
    const screens = await doubted();
    screens.press('s');
    expect(screens.shown()).toContain('scavenger: of the field sample, none of the lot’s animals');
    expect(screens.press('<enter>')).toMatchObject([
      {
        do: 'record',
        records: [
          {record: 'voucher', sample: 'S1', scavengerIn: 'S1-A', stage: 'adult', count: 2, taxon: 'fly'},
        ],
        saves: ['S1-v1', 'S1-v2'],
      },
    ]);
  });

  it('lets a mistaken name be typed again, and any other key answers nothing', async () => {
    const screens = await doubted();
    screens.press('x');
    expect(screens.shown()).toContain('Answer p for parasitoid, s for scavenger, m for mistake.');
    screens.press('mmoth<enter>');
    expect(screens.shown()).toMatch(/name +moth/);
    expect(screens.shown()).not.toContain('once more');
  });

  it('is not lost by a key that leads elsewhere', async () => {
    const screens = await doubted('f');
    screens.press('<escape><tab>');
    expect(screens.shown()).toContain('Enter writes this down, escape leaves it');
    expect(screens.shown()).toContain('S1-A-1');
  });

  it('takes several out of one vial back where they were miscounted', async () => {
    const screens = await driven(await roomWith(RECORDS));
    Object.assign(screens.app(), {
      sheets: [...screens.app().sheets, {kind: 'lot', code: 'S1-A', scroll: 0}],
    });
    screens.press('en07<enter>2f<enter>n');
    expect(screens.shown()).toContain('The last line is taken back.');
    expect(screens.press('f<enter>')).toMatchObject([
      {records: [{record: 'emergence', animal: '07', adults: [{sex: 'female', count: 1}]}]},
    ]);
  });
});
