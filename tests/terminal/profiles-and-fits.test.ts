// Leafing through profiles, and making one of days at temperatures, without a terminal.

import {beforeAll, describe, expect, it} from 'vitest';
import {UNICODE} from '../../src/exchange/pictures/glyphs.ts';
import {perform} from '../../src/terminal/perform.ts';
import type {Effect} from '../../src/terminal/sheet.ts';
import {type Driven, driven, NO_LONG_WORK, NOW, roomWith, SMALL_ROOM} from './app-of.ts';

let dir: string;
beforeAll(async () => {
  dir = await roomWith(SMALL_ROOM);
});

/** Does the work that keys asked for, and what its answers ask for in turn. */
async function done(screens: Driven, effects: readonly Effect[]): Promise<void> {
  const session = {dir, now: NOW, by: 'A. Keeper', warn() {}};
  for (const effect of effects) {
    const send = (message: Parameters<Driven['send']>[0]) => void screens.send(message);
    const answer = await perform(effect, screens.app().facts, {
      session,
      longWork: NO_LONG_WORK,
      glyphs: UNICODE,
      send,
    });
    if (answer !== undefined) await done(screens, screens.send(answer));
  }
}

/** Presses keys one by one, each with its work. */
async function pressed(screens: Driven, keys: string): Promise<void> {
  for (const [key] of keys.matchAll(/<[a-z-]+>|[\s\S]/g)) await done(screens, screens.press(key));
}

const ROWS = '15=40<enter>20 21,5<enter>25=13.2<enter>30=12.1<enter>33=14<enter>';

describe('the profiles', () => {
  it('are listed on P, and enter opens the curve, the days and the sources of one', async () => {
    const screens = await driven(dir);
    await pressed(screens, 'P');
    expect(screens.shown()).toMatch(/▸ \S+ +(species|family|order|guild|genus)/);
    while (!/▸ pieris-rapae/.test(screens.shown())) await pressed(screens, '<down>');
    await pressed(screens, '<enter>');
    expect(screens.shown()).toContain('pieris-rapae · Pieris rapae');
    expect(screens.shown()).toContain('egg to pupa: days by temperature');
    await pressed(screens, '<left>');
    expect(screens.shown()).toContain('pupa: days by temperature, o as published');
    expect(screens.shown()).toMatch(/⠤o⠤|o/);
    await pressed(screens, '<page-down><page-down><page-down>');
    expect(screens.shown()).toContain('sources');
  });
});

describe('days at temperatures', () => {
  it('are typed row by row; every model is fitted and drawn beside them', async () => {
    const screens = await driven(dir);
    await pressed(screens, `Pf${ROWS}`);
    expect(`\n${screens.shown()}`).toMatchInlineSnapshot(`
      "
       days at temperatures                                                    5 rows
      ────────────────────────────────────────────────────────────────────────────────
         model        from fastest to    12 d │                             ⣀⠔o⠉⠉⠉⠉⠉⠉
       ▸ best: degree-day                     │                        o ⣀⠔⠊      o
         degree-day    4.0     –     –        │                       ⢀⠤⠊
         schoolfield     –  28.6     –   18 d │                    ⢀⠤⠊⠁
         lactin-2      8.8  29.4  37.1        │                 ⢀o⠊⠁
         briere-2      8.6  29.5  35.5        │              ⢀⡠⠊⠁
         briere-1      8.7  29.5  35.6   33 d │           o⡠⠒⠁
         logan-6         –  29.8  36.1        │        ⢀⡠⠒⠁
         lactin-1        –  29.8  36.1        │      ⡠⠔⠁
                                        228 d │⣀⣀⣀⡠⠔⠉
                                            °C      10    15     20    25     30
      ────────────────────────────────────────────────────────────────────────────────
       days   15=40  20=21.5  25=13.2  30=12.1  33=14
       keep   profile –, stage –, source –
       model  degree-day: nothing below 8.3 °C, no faster above 30.0 °C
       look   33 °C: outside the linear range, and left out of the line.



       enter take row   o table   l lots   down model   t stage   p profile   n name
       b source   s save   u undo   tab round or threads   / find   ? all keys …"
    `);
    await pressed(screens, '<down><down>');
    expect(screens.shown()).toMatch(/▸ (lactin|briere|logan|school)/);
  });

  it('become a stage of a profile of the room, with its source; u takes it back', async () => {
    const screens = await driven(dir);
    await pressed(screens, `Pf${ROWS}s`);
    expect(screens.shown()).toContain('The stage that the days are of is not said yet: press t.');
    await pressed(screens, 'tpupa<enter>pmy-moth<enter>nMy moth<enter>bSmith 2019<enter>s');
    expect(screens.shown()).toContain('Kept in my-moth: pupa as degree-day. u takes it back.');
    expect(screens.app().facts.desk.state.profiles.get('my-moth')).toMatchObject({
      name: 'My moth',
      stages: [{stage: 'pupa', rate: {kind: 'degree-day'}}],
      sources: [{citation: 'Smith 2019'}],
    });
    await pressed(screens, 'u');
    expect(screens.app().facts.desk.state.profiles.has('my-moth')).toBe(false);
  });

  it('say what is wrong with a row, a table and lots that are none, and go on', async () => {
    const screens = await driven(dir);
    await pressed(screens, 'Pf15<enter>');
    expect(screens.shown()).toContain('"15" is no row. Write °C, then days: 15=55.6.');
    await pressed(screens, '<delete><delete>o/no/such.csv<enter>');
    expect(screens.shown()).toContain('there is no such file');
    await pressed(screens, `l${'<delete>'.repeat(20)}nobody<enter>`);
    expect(screens.shown()).toContain('there is no lot "nobody"');
  });

  it('fit into a small window and a large one', async () => {
    for (const size of [
      {columns: 60, rows: 16},
      {columns: 200, rows: 50},
    ]) {
      const screens = await driven(dir, size);
      await pressed(screens, `Pf${ROWS}`);
      const lines = screens.shown().split('\n');
      expect(lines.length).toBeLessThan(size.rows);
      for (const line of lines) expect([...line].length).toBeLessThanOrEqual(size.columns);
      expect(screens.shown()).toContain('best: degree-day');
    }
  });
});
