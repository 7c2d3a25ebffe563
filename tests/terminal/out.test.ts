// Labels and exports asked for on the screens, and written.
import {existsSync, readFileSync} from 'node:fs';
import {join} from 'node:path';
import {describe, expect, it} from 'vitest';
import {perform} from '../../src/terminal/perform.ts';
import type {Effect} from '../../src/terminal/sheet.ts';
import {temporaryFolder} from '../commands/program.ts';
import {type Driven, driven, NO_LONG_WORK, NOW, roomWith, SMALL_ROOM} from './app-of.ts';

const ADULTS = {
  record: 'emergence',
  lot: '26-031-A',
  at: '2026-06-09T09:00:00+02:00',
  adults: [{sex: 'female', count: 2}],
};

/** Press keys, type a file name over the one that is offered, and do what is asked for. */
async function writtenBy(
  screens: Driven,
  dir: string,
  keys: string,
  offered: string,
  file: string,
): Promise<string> {
  screens.press(keys);
  expect(screens.shown()).toContain(`${offered}_`);
  screens.press('<delete>'.repeat(offered.length));
  const effects = screens.press(`${file}<enter>`);
  const [effect] = effects.filter(({do: what}) => what === 'labels' || what === 'export');
  const message = await perform(effect as Effect, screens.app().facts, {
    session: {dir, now: NOW, by: 'A. Keeper', warn() {}},
    longWork: NO_LONG_WORK,
    send() {},
  });
  if (message?.is === 'refused') throw message.refusal;
  if (message !== undefined) screens.send(message);
  return screens.app().said?.text ?? '';
}

async function opened(...path: readonly object[]): Promise<{screens: Driven; dir: string}> {
  const dir = await roomWith([...SMALL_ROOM, ADULTS]);
  const screens = await driven(dir);
  const {sheets} = screens.app();
  Object.assign(screens.app(), {sheets: [...sheets, ...path]});
  return {screens, dir};
}

describe('on the screens', () => {
  it('b prints the labels of a lot to the file that is named, once', async () => {
    const {screens, dir} = await opened({kind: 'lot', code: '26-031-A', scroll: 0});
    const file = join(temporaryFolder(), 'l.pdf');
    const said = await writtenBy(screens, dir, 'b', 'labels-26-031-A.pdf', file);
    expect(said).toContain('6 labels are in');
    expect(readFileSync(file).subarray(0, 5).toString()).toBe('%PDF-');
    const again = await writtenBy(screens, dir, 'b', 'labels-26-031-A.pdf', `${file}2.txt`);
    expect(again).toContain('all 6 were printed before');
    expect(existsSync(`${file}2.txt`)).toBe(false);
  });

  it('b prints the card of a unit, and all labels from the list of what is open', async () => {
    const {screens, dir} = await opened({kind: 'unit', code: 'C1', span: 'week', shift: 0, scroll: 0});
    const card = join(temporaryFolder(), 'card.txt');
    await writtenBy(screens, dir, 'b', 'card-C1.pdf', card);
    expect(readFileSync(card, 'utf8')).toMatch(/^C1\ncage, rack A\/1\n26-031-A\nsample 26-031\n/);
    const list = await opened({kind: 'open-ends', cursor: 0});
    const labels = join(temporaryFolder(), 'all.txt');
    expect(await writtenBy(list.screens, list.dir, 'b', 'labels.pdf', labels)).toContain('6 labels');
    expect(readFileSync(labels, 'utf8')).toContain('♀ em. 9.vi.2026');
  });

  it('x writes the room out, as an archive or as tables', async () => {
    const {screens, dir} = await opened({kind: 'open-ends', cursor: 0});
    const folder = temporaryFolder();
    const zip = join(folder, 'a.zip');
    expect(await writtenBy(screens, dir, 'x', 'darwin-core.zip', zip)).toContain('in event.csv');
    expect(readFileSync(zip).subarray(0, 2).toString()).toBe('PK');
    await writtenBy(screens, dir, 'x', 'darwin-core.zip', join(folder, 'tables'));
    expect(readFileSync(join(folder, 'tables', 'specimens.csv'), 'utf8')).toContain(
      '26-031-A-1,adult,26-031-A',
    );
  });
});
