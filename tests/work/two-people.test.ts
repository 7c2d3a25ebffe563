// Two people on one round: nothing is done twice, whoever is quicker.
import {describe, expect, it} from 'vitest';
import {finish} from '../../src/work/care-acts.ts';
import {openDesk} from '../../src/work/desk.ts';
import {allTasks} from '../../src/work/today.ts';
import {newRoom, write} from '../room/rooms.ts';

const NOW = '2026-06-12T08:40';

describe('two people who tick the same task at the same moment', () => {
  it('write it once: the slower is told who did it, and writes nothing', async () => {
    const dir = await newRoom();
    await write(
      dir,
      [
        {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
        {record: 'sample', code: 'S1', collected: {from: '2026-06-07'}, method: 'beating'},
        {
          record: 'lot',
          code: 'A',
          sample: 'S1',
          unit: 'C1',
          at: '2026-06-09T09:00:00+02:00',
          stages: {larva: 8},
        },
      ],
      {now: Date.parse('2026-06-09T07:00:00Z')},
    );
    const session = (by: string) => ({dir, by, now: NOW, warn() {}});
    const tasks = await allTasks(await openDesk(session('Ida')));
    const id = tasks.find(({task}) => task === 'feed')!.id;
    const seen = ['foodLeft=none', 'mould=no', 'alive=8'];
    const outcomes = await Promise.allSettled(['Ida', 'Otto'].map(by => finish(session(by), [id], seen)));
    expect(outcomes.filter(({status}) => status === 'fulfilled')).toHaveLength(1);
    const refused = outcomes.find(outcome => outcome.status === 'rejected');
    expect(String(refused?.status === 'rejected' && refused.reason)).toMatch(/has just done|is done already/);
    const {state} = await openDesk(session('Ida'));
    expect(state.care.filter(({task}) => task === 'feed')).toHaveLength(1);
  });
});
