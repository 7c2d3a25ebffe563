// Stonefly nymphs are brought in and no aquarium holds them all today. Everything is invented.
import {readFileSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {newRoom, temporaryFolder} from '../commands/program.ts';
import {applied, refused, said, sample} from './story-room.ts';

const NOW = '2031-03-20T15:00';
const stories = [
  {animals: 20, warmest: 12, litres: {B1: 20, B2: 6, B3: 15, B4: 12, B5: 12}, caddis: 6, warm: 17.8},
  {animals: 26, warmest: 10, litres: {B1: 30, B2: 8, B3: 20, B4: 9.5, B5: 14}, caddis: 5, warm: 13.4},
];

interface Answer {
  readonly best: {readonly unit: string; readonly from: string} | null;
  readonly holdSome: readonly {readonly unit: string; readonly holds: number}[];
  readonly unfit: readonly {readonly unit: string; readonly why: string}[];
  readonly parts: readonly object[];
}

describe.each(stories)('$animals stonefly nymphs', ({animals, warmest, litres, caddis, warm}) => {
  const EACH_LITRES = 0.5;
  const cold = warmest - 1.2;
  const inB2 = litres.B2 / EACH_LITRES;
  const inB4 = litres.B4 / EACH_LITRES - caddis;
  const ask = ['plan', 'R31-040', '--profile', 'plecoptera', '--animals', String(animals)];
  const question = [...ask, '--warmest', String(warmest)];

  function roomOf({cleaned}: {cleaned: boolean}) {
    const room = newRoom();
    const unit = (code: keyof typeof litres, more: object) => ({
      ...{record: 'unit', code, type: 'aquarium', place: `bench/${code}`, volumeLitres: litres[code]},
      ...{setPoints: {constant: cold}, aerated: true, ...more},
    });
    const lot = (code: string, unit: string, taxon: string, stage: string, count: number) => ({
      ...{record: 'lot', code, sample: 'S1', unit, taxon, at: '2031-03-01T10:00', stages: {[stage]: count}},
    });
    applied(room, NOW, [
      sample('S1', '2031-02-27'),
      unit('B1', {setPoints: {constant: warm}}),
      unit('B2', {}),
      unit('B3', {}),
      unit('B4', {}),
      unit('B5', {freeFrom: '2031-03-21T09:00'}),
      lot('R31-030', 'B3', 'Odonata', 'nymph', 1),
      lot('R31-031', 'B4', 'Trichoptera', 'larva', caddis),
      lot('R31-035', 'B5', 'Trichoptera', 'larva', 4),
      {record: 'loss', lot: 'R31-035', at: '2031-03-18T10:00', stage: 'larva', count: 4, cause: 'dead'},
    ]);
    if (cleaned) said(room, '2031-03-20T14:00', 'care', 'B5', 'clean-out');
    return room;
  }

  describe('with B5 cleaned out', () => {
    const room = roomOf({cleaned: true});
    const words = said(room, NOW, ...question);

    it('refuses the warm one and the one with a predator, each with why', () => {
      expect(words).toContain(`B1 not fit: ${warm} °C is above ${warmest} °C`);
      expect(words).toContain('B3 not fit: Odonata of R31-030 live there and eat others');
    });

    it('counts the room that is left beside those who live there: neither holds all', () => {
      expect(words).toContain(`B2 holds ${inB2} of ${animals}`);
      expect(words).toContain(`B4 holds ${inB4} of ${animals}`);
      expect(words).toContain('beside R31-031');
    });

    it('says that B5 is best, tomorrow, with a night in the cold box', () => {
      expect(words).toContain('best B5, at bench/B5, from tomorrow 09:00; in the cold box overnight');
    });

    it('proposes for today how to part them, with the codes of the parts', () => {
      const rest = animals - inB2;
      expect(words).toContain(`today parted: ${inB2} in B2 as R31-040.1, ${rest} in B4 as R31-040.2`);
    });

    it('answers the same as JSON', () => {
      const answer = room.ask<Answer>(NOW, ...question);
      expect(answer.best).toMatchObject({unit: 'B5', from: '2031-03-21T09:00:00+00:00'});
      expect(answer.holdSome.map(({unit, holds}) => [unit, holds])).toEqual([
        ['B2', inB2],
        ['B4', inB4],
      ]);
      expect(answer.unfit.map(({unit}) => unit)).toEqual(['B1', 'B3']);
      expect(answer.parts).toEqual([
        {lot: 'R31-040.1', unit: 'B2', animals: inB2},
        {lot: 'R31-040.2', unit: 'B4', animals: animals - inB2},
      ]);
    });

    it('asks whoever puts a lot beside a predator, and puts it there for whoever is sure', () => {
      said(room, NOW, 'lot', 'R31-041', 'B2', 'nymph=2', '--sample', 'S1', '--taxon', 'Plecoptera');
      const move = ['move', 'R31-041', 'B3'];
      expect(refused(room, NOW, ...move)).toContain(
        'B3 does not suit R31-041: Odonata of R31-030 live there and eat others. teneral plan R31-041 shows where',
      );
      expect(said(room, NOW, ...move, '--sure')).toContain(
        'look at this place again: B3: Odonata of R31-030 live there and eat others',
      );
    });
  });

  it('does not offer B5 while nobody says that it was cleaned out', () => {
    const room = roomOf({cleaned: false});
    const words = said(room, NOW, ...question);
    expect(words).toContain('B5 not fit: not cleaned out since R31-035 lived there');
    expect(words).not.toContain('best B5');
    expect(room.ask<Answer>(NOW, ...question).best).toBeNull();
  });

  it('does not leave them in a cold box for days where they can be parted', () => {
    const room = roomOf({cleaned: true});
    applied(room, NOW, [{record: 'unit', code: 'B5', freeFrom: '2031-03-24T09:00'}]);
    const words = said(room, NOW, ...question);
    expect(words).toContain(`best parted today: ${inB2} in B2 as R31-040.1`);
    expect(words).toContain('from Mon 24 March 09:00');
    expect(room.ask<Answer>(NOW, ...question).best).toBeNull();
  });

  describe('opened with what they need', () => {
    const needs = ['--warmest', String(warmest), '--litres-each', '0.8'];
    const open = (unit: string, count: number) => [
      ...['lot', 'R31-040', unit, `nymph=${count}`, '--sample', 'S1', '--candidate', 'plecoptera'],
      ...needs,
    ];

    it('are asked about where it would harm them: too warm, not aerated, on land; with all that speaks against it', () => {
      const room = roomOf({cleaned: true});
      applied(room, NOW, [
        {record: 'unit', code: 'B6', type: 'aquarium', place: 'bench/B6', aerated: false, volumeLitres: 1},
        {record: 'unit', code: 'C1', type: 'cage', place: 'rack/1'},
      ]);
      expect(refused(room, NOW, ...open('B1', animals))).toContain(
        `B1 does not suit R31-040: ${warm} °C is above ${warmest} °C. teneral plan R31-040 --profile plecoptera --animals ${animals} --litres-each 0.8 --warmest ${warmest} shows where they can live.`,
      );
      expect(refused(room, NOW, ...open('B6', 3))).toContain(
        'B6 does not suit R31-040: its water is not aerated; it has room for 1 of these 3.',
      );
      expect(refused(room, NOW, ...open('C1', 3))).toContain('a cage, but these are kept in an aquarium');
    });

    it('are taken where it is only full, not free yet or not cleaned, and that is said', () => {
      expect(said(roomOf({cleaned: true}), NOW, ...open('B2', animals))).toContain(
        `look at this place again: B2: it has room for ${Math.floor(litres.B2 / 0.8)} of these ${animals}`,
      );
      expect(said(roomOf({cleaned: true}), NOW, ...open('B5', 3))).toContain(
        'it is to be left free until 2031-03-21 09:00',
      );
      expect(said(roomOf({cleaned: false}), NOW, ...open('B5', 3))).toContain(
        'not cleaned out since R31-035 lived there (teneral care B5 clean-out); it is to be left free until',
      );
    });

    it('are asked about when they are split into or merged into such a unit, and where they live they stay', () => {
      const room = roomOf({cleaned: true});
      said(room, NOW, ...open('B2', 5));
      expect(refused(room, NOW, 'split', 'R31-040', 'R31-040.1', 'nymph=2', '--unit', 'B3')).toContain(
        'B3 does not suit R31-040.1: Odonata',
      );
      said(room, NOW, 'split', 'R31-040', 'R31-040.1', 'nymph=2', '--unit', 'B4');
      said(room, NOW, 'split', 'R31-040', 'R31-040.2', 'nymph=1');
      said(room, NOW, 'merge', 'R31-040.2', 'R31-040');
      said(room, NOW, 'move', 'R31-040', 'B1', '--sure');
      expect(refused(room, NOW, 'merge', 'R31-040.1', 'R31-040')).toContain(
        `B1 does not suit R31-040: ${warm} °C is above ${warmest} °C`,
      );
    });

    it('have it kept with them for every later question, until it is revised', () => {
      const room = roomOf({cleaned: true});
      expect(said(room, NOW, ...question)).toContain(
        `to keep teneral lot R31-040 … --warmest ${warmest} keeps with the lot what was asked for here`,
      );
      expect(said(room, NOW, ...open('B2', 5))).toContain(
        `they need 0.8 L each, no warmer than ${warmest} °C`,
      );
      const words = said(room, NOW, 'plan', 'R31-040');
      expect(words).toContain(`2 to ${warmest} °C, as kept with the lot; 0.8 L each; aerated water`);
      expect(words).toContain(`B1 not fit: ${warm} °C is above ${warmest} °C`);
      expect(words).not.toContain('to keep');
      said(room, NOW, 'split', 'R31-040', 'R31-040.1', 'nymph=2', '--unit', 'B4');
      expect(said(room, NOW, 'plan', 'R31-040.1')).toContain('0.8 L each');
      expect(said(room, NOW, 'revise', 'R31-040', '--litres-each', '1.5', '--not-aerated')).toContain(
        'needs 1.5 L each, water that need not be aerated',
      );
      const revised = said(room, NOW, 'plan', 'R31-040');
      expect(revised).toContain(`2 to ${warmest} °C, as kept with the lot; 1.5 L each; nobody beside them`);
      const cooler = ['revise', 'R31-040', '--coolest', String(warmest + 2)];
      expect(refused(room, NOW, ...cooler)).toContain(
        `lot R31-040 would need to live no cooler than ${warmest + 2} °C and no warmer than ${warmest} °C`,
      );
      expect(refused(room, NOW, ...cooler, '--needs-as-profile')).toContain('Leave one of them out.');
      said(room, NOW, 'revise', 'R31-040', '--needs-as-profile');
      expect(said(room, NOW, 'plan', 'R31-040')).toContain(
        '2 to 18 °C, of plecoptera; 0.5 L each; aerated water',
      );
    });

    it('say so when their needs are revised and their unit no longer suits them', () => {
      const room = roomOf({cleaned: true});
      said(room, NOW, ...open('B2', 5));
      expect(said(room, NOW, 'revise', 'R31-040', '--warmest', String(cold - 1))).toContain(
        `look at this place again: B2: ${cold.toFixed(1)} °C is above ${cold - 1} °C`,
      );
    });

    it('are taken from a file as they are, with a warning', () => {
      const room = roomOf({cleaned: true});
      const {status, err} = room.apply(NOW, [
        {
          ...{record: 'lot', code: 'R31-040', sample: 'S1', unit: 'B3', stages: {nymph: 3}},
          ...{candidates: [{profile: 'plecoptera'}], needs: {warmestC: warmest, litresEach: 0.8}},
        },
      ]);
      expect(status).toBe(0);
      expect(err).toContain('look at this place again: B3: Odonata of R31-030 live there and eat others');
    });

    it('may live beside eaters where that is said, and leave with their needs as a table', () => {
      const room = roomOf({cleaned: true});
      said(room, NOW, ...open('B3', 3), '--beside-eaters', '--coolest', '4');
      const folder = temporaryFolder();
      said(room, NOW, 'export', 'csv', '--out', folder);
      const [heading, ...rows] = readFileSync(join(folder, 'lots.csv'), 'utf8').trim().split(/\r?\n/);
      const row = rows.find(one => one.startsWith('R31-040,'));
      const cells = Object.fromEntries(heading!.split(',').map((name, i) => [name, row!.split(',')[i]]));
      expect(cells).toMatchObject({
        ...{litresEach: '0.8', coolestC: '4', warmestC: String(warmest), aerated: '', besideEaters: 'yes'},
      });
      const file = join(temporaryFolder(), 'lots.csv');
      writeFileSync(file, [heading, row!.replaceAll('R31-040', 'R31-042')].join('\n'));
      said(room, NOW, 'apply', file, '--as', 'lot');
      expect(said(room, NOW, 'daybook', 'R31-042')).toContain(
        `they need 0.8 L each, no cooler than 4 °C, no warmer than ${warmest} °C, also beside animals that eat others`,
      );
      expect(said(room, NOW, 'verify')).toContain('sound');
    });
  });

  it('gives each as much room as is asked for', () => {
    const answer = roomOf({cleaned: true}).ask<Answer>(NOW, ...question, '--litres-each', '0.8');
    // Those that live in B4 keep their half litre each.
    const left = Math.floor((litres.B4 - caddis * EACH_LITRES) / 0.8);
    expect(answer.holdSome.find(({unit}) => unit === 'B2')?.holds).toBe(Math.floor(litres.B2 / 0.8));
    expect(answer.holdSome.find(({unit}) => unit === 'B4')?.holds).toBe(left);
  });

  it('asks what a lot that is not there is to be', () => {
    expect(refused(roomOf({cleaned: true}), NOW, 'plan', 'R31-040')).toContain(
      '--profile plecoptera --animals 20',
    );
  });
});
