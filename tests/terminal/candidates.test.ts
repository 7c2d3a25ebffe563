// The sheet on which a lot's candidates are chosen, driven without a terminal.
import {beforeAll, describe, expect, it} from 'vitest';
import {choicesFor} from '../../src/work/choice.ts';
import {type Driven, driven, roomWith, SMALL_ROOM} from './app-of.ts';

let dir: string;
beforeAll(async () => {
  dir = await roomWith(SMALL_ROOM);
});

/** Answers what the sheet asks to be looked up. */
async function lookedUp({app, send}: Driven, effects: ReturnType<Driven['press']>): Promise<void> {
  const asked = effects.find(effect => effect.do === 'choices');
  if (asked?.do !== 'choices') throw new Error('no suggestions were asked for');
  const value = await choicesFor(asked.clues, app().facts.desk.state);
  send({is: 'choices', key: asked.key, choices: {value}});
}

/** The lot under the cursor of the round, then what it may be. */
async function opened(size?: {columns: number; rows: number}): Promise<Driven> {
  const screens = await driven(dir, size);
  screens.press('<enter>');
  if (!screens.shown().includes('26-031-A ·')) screens.press('<enter>');
  await lookedUp(screens, screens.press('m'));
  return screens;
}

describe('what a lot may be', () => {
  it('stands beside what it has, with the reason, at 80 × 24', async () => {
    const {shown} = await opened();
    expect(shown()).toContain('what 26-031-A may be');
    expect(shown()).toMatch(/1\.00 {2,}pieris-rapae|1\.00 +\d\.\d\d +pieris-rapae/);
    expect(shown()).toContain('enter keep');
    for (const row of shown().split('\n')) expect(row.length).toBeLessThanOrEqual(80);
  });

  it('t tells more and the suggestions follow; s takes them; enter writes one revision', async () => {
    const screens = await opened();
    screens.press('t');
    await lookedUp(screens, screens.press('host=Brassica sat=leaf taxon=Lepidoptera<enter>'));
    expect(screens.shown()).toContain('known  Lepidoptera, host Brassica, leaf');
    screens.press('s');
    const [effect] = screens.press('<enter>');
    if (effect?.do !== 'record') throw new Error('nothing is written');
    const [record] = effect.records;
    expect(record).toMatchObject({
      record: 'revision',
      lot: '26-031-A',
      why: 'Lepidoptera, host Brassica, leaf',
    });
    const {candidates} = record as {candidates: {weight: number}[]};
    expect(candidates.map(({weight}) => weight)).toEqual(
      candidates.map(({weight}) => weight).sort((a, b) => b - a),
    );
  });

  it('space leaves a candidate out, plus and minus weigh it, and none at all cannot be kept', async () => {
    const screens = await opened();
    const rows = screens.shown().split('\n');
    const at = rows.findIndex(row => row.includes('pieris-rapae')) - rows.findIndex(row => row.includes('▸'));
    screens.press('<down>'.repeat(Math.max(0, at)));
    expect(screens.shown()).toMatch(/▸ +1\.00.*pieris-rapae/);
    screens.press(' ');
    expect(screens.shown()).not.toMatch(/1\.00.*pieris-rapae/);
    expect(screens.press('<enter>')).toEqual([]);
    expect(screens.shown()).toContain('No candidate has a weight');
    screens.press('+');
    expect(screens.shown()).toMatch(/▸ +1\.00.*pieris-rapae/);
  });

  it('a wrong clue is named and nothing is lost', async () => {
    const screens = await opened();
    screens.press('t');
    screens.press('sat=moon<enter>');
    expect(screens.shown()).toContain('"moon" is no place an animal sits in');
    expect(screens.shown()).toContain('pieris-rapae');
  });
});
