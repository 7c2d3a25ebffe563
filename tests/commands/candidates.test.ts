// teneral candidates: what a lot may be, and giving it what it may be.
import {beforeEach, describe, expect, it} from 'vitest';
import {command} from '../../src/commands/candidates.ts';
import {openDesk} from '../../src/work/desk.ts';
import {newRoom, write} from '../room/rooms.ts';
import {run} from './in-process.ts';

interface Told {
  readonly lot: string | null;
  readonly suggestions: readonly {profile: string; weight: number; why: string[]; dated: boolean}[];
}

let dir: string;
beforeEach(async () => {
  dir = await newRoom();
  await write(dir, [
    {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
    {
      record: 'sample',
      code: '26-031',
      collected: {from: '2026-06-07'},
      method: 'search',
      host: 'Brassica oleracea',
    },
    {
      record: 'lot',
      code: '26-031-A',
      sample: '26-031',
      unit: 'C1',
      taxon: 'Lepidoptera',
      stages: {'larva-4': 18},
    },
  ]);
});

const candidatesNow = async () =>
  (await openDesk({dir, by: 'A. Keeper', warn() {}})).state.lots.get('26-031-A')!.candidates;

describe('candidates', () => {
  it('needs no room for what a person knows', async () => {
    const {answer, text} = await run<Told>(command, ['--sat', 'mine', '--host', 'Solanum', '--length', '7']);
    expect(answer.lot).toBeNull();
    expect(answer.suggestions[0]).toMatchObject({profile: 'tuta-absoluta', dated: true});
    expect(text).toMatch(/known: host Solanum, mine, 7 mm/);
    expect(text).toMatch(/lives on Solanum; met in or on mine/);
  });

  it('takes what the daybook says of a lot, and what is added over it', async () => {
    const known = await run<Told>(command, ['26-031-A'], {dir});
    const told = await run<Told>(command, ['26-031-A', '--sat', 'leaf', '--length', '24'], {dir});
    const white = ({answer}: typeof known) =>
      answer.suggestions.find(({profile}) => profile === 'pieris-rapae')?.weight ?? 0;
    expect(white(told)).toBeGreaterThan(white(known));
    expect(await candidatesNow()).toEqual([]);
  });

  it('--take gives them to the lot as one entry that can be taken back', async () => {
    const {text} = await run(command, ['26-031-A', '--sat', 'leaf', '--take'], {dir});
    expect(text).toMatch(/Lot 26-031-A may be/);
    const candidates = await candidatesNow();
    expect(candidates.length).toBeGreaterThan(2);
    expect(candidates.map(({profile}) => profile)).toContain('lepidoptera');
  });

  it('--set gives it what a person knows better', async () => {
    await run(command, ['26-031-A', '--set', 'pieris-napi=0.8', '--set', 'lepidoptera=0.2'], {dir});
    expect(await candidatesNow()).toEqual([
      {profile: 'pieris-napi', weight: 0.8},
      {profile: 'lepidoptera', weight: 0.2},
    ]);
  });

  it.each([
    [['--sat', 'moon'], /no place an animal sits in/],
    [['--length', 'long'], /"long" is no length/],
    [['--month', '13'], /"13" is no month/],
    [['26-099-A'], /there is no lot "26-099-A"/],
    [['--take', '--sat', 'leaf'], /no lot is named/],
    [['26-031-A', '--set', 'pieris-rapa=1'], /pieris-rapa/],
  ])('%j is refused and changes nothing', async (words, why) => {
    await expect(run(command, words, {dir})).rejects.toThrow(why);
    expect(await candidatesNow()).toEqual([]);
  });
});
