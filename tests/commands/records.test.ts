// From the trap to the store by commands: what is unusual is asked about, everything answers as JSON too.
import {beforeAll, describe, expect, it} from 'vitest';
import {newRoom, type RoomAt} from './program.ts';

const NOW = '2031-06-10T09:00Z';
const PIT = ['sample', '31-015', 'pitfall', '--collected', '2031-06-01/2031-06-06', '--traps', '6'];

interface Applied {
  readonly applied: number;
  readonly hints: readonly string[];
}

describe('records by commands', () => {
  let room: RoomAt;
  beforeAll(() => {
    room = newRoom();
    room.apply(NOW, [
      {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1'},
      {record: 'sample', code: '31-001', collected: {from: '2031-06-01'}, method: 'search'},
      {
        record: 'lot',
        code: '31-001-A',
        sample: '31-001',
        unit: 'C1',
        at: '2031-06-09T09:00Z',
        stages: {pupa: 3, larva: 4},
      },
    ]);
  }, 120_000);

  it('a sample whose coordinates lie outside its country is asked about, and written when somebody is sure', () => {
    const where = ['--country', 'Switzerland', '--coordinates', '46° 14′ 59″ N, 8° 1′ 2″ W'];
    const asked = room.at(NOW, ...PIT, ...where);
    expect(asked.status).toBe(1);
    expect(asked.err).toMatch(/with the other sign of the longitude they would lie in it.*--sure/);
    const {applied, hints} = room.ask<Applied>(NOW, ...PIT, ...where, '--sure');
    expect(applied).toBe(1);
    expect(hints).toContain('its animals waited up to 5 days in the trap: look at their condition');
    expect(hints.join(' ')).toMatch(/look before you reach in/);
  }, 120_000);

  it('more adults than pupae of yesterday’s count are asked about with the sum, more than are alive refused', () => {
    const emerged = ['emerge', '31-001-A', '--male', '4', '--at', '2031-06-09T20:00Z'];
    expect(room.at(NOW, ...emerged)).toMatchObject({
      status: 1,
      err: expect.stringMatching(/4 adults in all.*3 pupae/),
    });
    expect(room.at(NOW, ...emerged, '--sure').status).toBe(0);
    expect(room.at(NOW, 'emerge', '31-001-A', '--male', '9', '--sure')).toMatchObject({
      status: 1,
      err: expect.stringMatching(/9 emerged where 3 are alive \(7 started = 3 alive \+ 4 emerged\)/),
    });
  }, 120_000);

  it('no male emerges from a closed lot, before its lot began, or under a code that is used, however sure', () => {
    const male = ['emerge', '31-001-A', '--male', '1', '--sure'];
    expect(room.at(NOW, ...male, '--at', '2031-06-08T09:00Z').err).toMatch(/is before lot 31-001-A began/);
    expect(room.at(NOW, ...male, '--code', '31-001-A-1').err).toMatch(
      /the code 31-001-A-1 is in use already/,
    );
    room.at(NOW, 'close', '31-001-A', '--reason', 'moved out of the house');
    expect(room.at('2031-06-11T09:00Z', ...male).err).toMatch(/lot 31-001-A was closed/);
  }, 120_000);

  it('what was named, prepared and corrected is found, and what is open listed', () => {
    expect(room.at(NOW, 'identify', '31-001-A-1', 'Culex pipiens', '--qualifier', 'cf.').out).toMatch(
      /Culex cf\. pipiens/,
    );
    expect(
      room.at(NOW, 'prepare', '31-001-A-1', '31-001-A-2', '--method', 'pinned', '--store', 'drawer 12')
        .status,
    ).toBe(0);
    const [found] = room.ask<{kind: string; code: string}[]>(NOW, 'find', 'culx', 'pipens');
    expect(found).toMatchObject({kind: 'specimen', code: '31-001-A-1'});
    const open = room.ask<{code: string}[]>(NOW, 'open-ends', 'unidentified');
    expect(open.map(({code}) => code)).toEqual(['31-001-A-2', '31-001-A-3', '31-001-A-4']);
    const outcome = room.ask<{sexes: object; lifeTable: object}>(NOW, 'outcome', '31-001-A');
    expect(outcome).toMatchObject({sexes: {male: 4}, lifeTable: {adults: 4}});
  }, 120_000);
});
