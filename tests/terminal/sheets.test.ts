// Sheets drawn and driven without a terminal, on a small real room.

import {beforeAll, describe, expect, it} from 'vitest';
import {acts} from '../../src/terminal/form/forms.ts';
import {openDesk} from '../../src/work/desk.ts';
import {finderOf} from '../../src/work/find.ts';
import {outlooks} from '../../src/work/outlook.ts';
import {type Driven, driven, roomWith, SMALL_ROOM} from './app-of.ts';

let dir: string;
beforeAll(async () => {
  dir = await roomWith(SMALL_ROOM);
});

/** The cursor down to a line that holds the words. */
function downTo({press, shown}: Driven, words: string): void {
  for (let i = 0; i < 20; i++) {
    if (
      shown()
        .split('\n')
        .some(row => row.includes('▸') && row.includes(words))
    )
      return;
    press('<down>');
  }
  throw new Error(`no line holds ${words}:\n${shown()}`);
}

/** Answers what the threads ask the forecasting thread for. */
async function forecast(driven: Driven, effects: ReturnType<Driven['press']>): Promise<void> {
  const asked = effects.find(effect => effect.do === 'outlooks');
  if (asked?.do !== 'outlooks') throw new Error('no forecast was asked for');
  for (const outlook of await outlooks(driven.app().facts.desk, {sharesOn: asked.days}))
    driven.send({is: 'outlook', code: outlook.lot.code, outlook: {days: asked.days, outlook}});
  driven.send({is: 'outlooks-told', of: asked.of});
}

describe('the round', () => {
  it('is the first sheet, by place, with the reason for the task under the cursor', async () => {
    expect(`\n${(await driven(dir)).shown()}`).toMatchInlineSnapshot(`
      "
       Fri 12 Jun, 08:40 · north room                6 to do, 4 late, 1 amiss, 13 min
      ────────────────────────────────────────────────────────────────────────────────
       rack A
       ▸ C1    feed 18 larvae               26-031-A   past its limit by 24 h
         C1    clean                                   late 24 h, limit today 09:00
         C1    moisten                                 today
       window bench
         T1    check the air supply                    past its limit by 36 h
         T1    feed 12 nymphs               26-031-W   past its limit by 24 h
         T1    top up the water                        today
       amiss
         logger L1 of C1 has no reading yet

      ────────────────────────────────────────────────────────────────────────────────
       feed 18 larvae, C1 at rack A/1
       why    not fed yet, since Tue 09:00; every 2 days, never over 2 days
       look   food left none some much · mould no yes · alive
       care   hairs and frass irritate skin, eyes and lungs: gloves, and do not brush
              the cage out dry


       space done   s skip   l log reading   e adults   n note   x tick   enter open
       w ahead   u undo   tab round or threads   / find   ? all keys   q quit"
    `);
  });

  it('shows long titles whole in a large window', async () => {
    const subimago = {
      ...{record: 'emergence', lot: '26-031-W', at: '2026-06-09T09:00:00+02:00'},
      ...{adults: [{count: 1}], as: 'subimago'},
    };
    const large = await driven(await roomWith([...SMALL_ROOM, subimago]), {columns: 200, rows: 50});
    expect(large.shown()).toMatch(/T1 +move the subimago dry, look for the imago +26-031-W/);
  });

  it('fits the narrowest page', async () => {
    const {shown} = await driven(dir, {columns: 60, rows: 16});
    expect(`\n${shown()}`).toMatchInlineSnapshot(`
      "
       Fri 12 Jun, 08:40 · nort… 6 to do, 4 late, 1 amiss, 13 min
      ────────────────────────────────────────────────────────────
       rack A
       ▸ C1    feed 18 larvae   26-031-A   past its limit by 24 h
         C1    clean                       late 24 h, limit today…
         C1    moisten                     today
       window bench
         T1    check the air s…            past its limit by 36 h
      ────────────────────────────────────────────────────────────
       feed 18 larvae, C1 at rack A/1
       why    not fed yet, since Tue 09:00; every 2 days, never
              over 2 days …

       space done   s skip   l log reading   e adults   n note
       x tick   enter open   w ahead   u undo …"
    `);
  });

  it('in a window too small says which size it needs, and still lists the tasks', async () => {
    const {shown, press} = await driven(dir, {columns: 40, rows: 8});
    expect(`\n${shown()}`).toMatchInlineSnapshot(`
      "
      Needs 60 columns and 16 rows; has 40 by
      8. q quits.
      C1 feed 18 larvae: past its limit by 24…
      C1 clean: late 24 h, limit today 09:00
      T1 check the air supply: past its limit…
      T1 feed 12 nymphs: past its limit by 24…
      C1 moisten: today"
    `);
    expect(press('q')).toEqual([{do: 'quit'}]);
  });

  it('reads as plain lines for a screen reader', async () => {
    const {shown} = await driven(dir, {columns: 80, rows: 24}, true);
    expect(shown()).not.toMatch(/[─┃│┄]/);
    expect(shown()).toContain('feed 18 larvae');
  });

  it('does a task once its answers are given, and puts the next line under the cursor', async () => {
    const screens = await driven(dir);
    const {press, shown, app} = screens;
    const first = app().facts.today.tasks.find(({task}) => task === 'feed')!;
    downTo(screens, 'feed');
    expect(press(' ')).toEqual([]);
    expect(shown()).toContain('food left?  n none  s some  m much');
    expect(press('sn18<enter>')).toEqual([
      {do: 'finish', groups: [{ids: [first.id], seen: {foodLeft: 'some', mould: false, alive: 18}}]},
    ]);
    expect(shown()).not.toMatch(/▸.*feed/);
  });

  it('asks for a reason before it skips', async () => {
    const {press, app} = await driven(dir);
    press('s');
    const [effect] = press('no leaves<enter>');
    expect(effect).toMatchObject({do: 'skip', why: 'no leaves'});
    expect(app().asking).toBeUndefined();
  });

  it('writes a reading by hand of the logger of the unit, and says what is none', async () => {
    const screens = await driven(dir);
    const {press} = screens;
    downTo(screens, 'C1');
    press('l');
    expect(press('21,4 62<enter>')).toMatchObject([
      {do: 'record', records: [{record: 'reading', logger: 'L1', temperature: 21.4, humidity: 62}]},
    ]);
    const again = await driven(dir);
    downTo(again, 'C1');
    again.press('l');
    expect(again.press('warm<enter>')).toEqual([]);
    expect(again.shown()).toContain('"warm" is no reading');
  });

  it('a key that can do nothing gives the reason', async () => {
    const screens = await driven(dir);
    const {press, shown} = screens;
    downTo(screens, 'T1');
    press('l');
    expect(shown()).toContain('T1 has no logger or thermometer');
    press('z');
    expect(shown()).toContain('Z does nothing here; ? lists all keys'.replace('Z', 'z'));
  });

  it('a refusal is shown and nothing else changes; a change by somebody else comes in', async () => {
    const {send, shown, app} = await driven(dir);
    const {Refusal} = await import('../../src/records/refusal.ts');
    send({
      is: 'refused',
      refusal: new Refusal('the sum does not add up', '26-031-A', 'Record the loss first.'),
    });
    expect(shown()).toContain('the sum does not add up. Record the loss first.');
    expect(app().sheets).toHaveLength(1);
    const {facts} = app();
    const room = {...facts.desk.room, revision: 'another', name: 'renamed room'};
    send({is: 'facts', facts: {...facts, desk: {...facts.desk, room}}});
    expect(shown()).toContain('renamed room');
  });

  it('an answer worked out from the room as it was before a change is dropped, and asked for again', async () => {
    const {send, press, shown, app} = await driven(dir);
    const wanted = press('f');
    expect(wanted).toMatchObject([{do: 'text', topic: 'wait'}]);
    const {facts: asOf} = app();
    const room = {...asOf.desk.room, revision: 'another'};
    const changed = {...asOf, desk: {...asOf.desk, room}} as typeof asOf;
    expect(send({is: 'facts', facts: changed})).toEqual(wanted);
    const text = (words: string) => ({value: [[{text: words, kind: 'plain' as const}]]});
    expect(send({is: 'text', key: 'wait 80', text: text('as it was'), asOf})).toEqual([]);
    expect(shown()).toContain('This is being worked out');
    send({is: 'text', key: 'wait 80', text: text('as it is'), asOf: changed});
    expect(shown()).toContain('as it is');
  });

  it('an empty room shows the lines that start it', async () => {
    const {shown} = await driven(await roomWith([]));
    expect(`\n${shown()}`).toMatchInlineSnapshot(`
      "
       Fri 12 Jun, 08:40 · north room                                         0 to do
      ────────────────────────────────────────────────────────────────────────────────
       This room is empty. These lines, in a shell, start it; this sheet follows.

        done  the room is made
              a field sample comes in
          teneral sample 26-001 search --collected 2026-06-01
              a cage, aquarium or emergence box stands ready
          teneral logger L1 automatic && teneral unit C1 cage "rack A/1" --logger L1
              its animals become a lot in it
          teneral lot 26-001-A C1 larva-3=12 --sample 26-001 --candidate lepidoptera
              the logger’s file is read in
          teneral import L1 FILE.csv
      ────────────────────────────────────────────────────────────────────────────────







       space done   s skip   l log reading   e adults   n note   x tick   enter open
       w ahead   u undo   tab round or threads   / find   ? all keys   q quit"
    `);
  });
});

describe('the threads', () => {
  it('show every open lot along the days', async () => {
    const screens = await driven(dir);
    await forecast(screens, screens.press('<tab>'));
    expect(`\n${screens.shown()}`).toMatchInlineSnapshot(`
      "
       Fri 12 Jun, 08:40 · north room · 3 lots                       1 column = 1 day
      ────────────────────────────────────────────────────────────────────────────────
                       25 May 1 Jun      ┃   15 Jun 22 Jun 29 Jun 6 Jul      first
       ▸26-031-A  C1                  lll┃llll░░▒▒▒▒▒▒▒▒▒▒▒▒▒░░░░░░          Thu
                                             ^
        26-031-G  E4                  · ·┃ · · · · · · · · · · · · · · · · · not known
        26-031-W  T1                  9  ┃                                   not known






      ────────────────────────────────────────────────────────────────────────────────
       26-031-A · 18 alive of 18 · pieris-rapae 1.00
       developing
       first  Thu (Tue to 20 Jun)   half  24 Jun (22 Jun to 27 Jun)
       look from  Mon   next  Mon   pace  1.00
       The instar was not told: it is taken as likely as the time each instar takes.


       enter open   c climate   e adults   n note   left earlier   right later
       w why   u undo   tab round or threads   / find   ? all keys   q quit"
    `);
  });

  it('move in time and ask only for what is not known', async () => {
    const screens = await driven(dir);
    await forecast(screens, screens.press('<tab>'));
    expect(screens.press('<down>')).toEqual([]);
    expect(screens.press('<right>')).toMatchObject([{do: 'outlooks'}]);
    expect(screens.press('-')).toMatchObject([{do: 'outlooks'}]);
    expect(screens.shown()).toContain('1 column = 2 days');
  });
});

describe('recording an emergence', () => {
  it('takes adults with few keys, gives their codes at once and writes them with exuviae and parasitoids', async () => {
    const {press, shown} = await driven(dir);
    press('<tab>e');
    press('2fmx');
    press('EX 1<delete><delete>-1<enter>p2 Braconidae<enter>');
    expect(`\n${shown()}`).toMatchInlineSnapshot(`
      "
       adults of 26-031-A · not yet identified                   18 alive, 3 come out
      ────────────────────────────────────────────────────────────────────────────────
       found         today
       not yet out   Tue 9 June 09:00

          2 female   26-031-A-1 to 26-031-A-2
          1 male     26-031-A-3

       fate          kept
       kept with it  exuviae EX-1
       parasitoids   2 Braconidae, 26-031-A-p1 to 26-031-A-p2
       host remains  r keeps it as 26-031-A-p1a
       cocoon        o keeps it as 26-031-A-p1b
      ────────────────────────────────────────────────────────────────────────────────
       enter writes it down
       care   let adults harden before they are handled; keep exuviae and
              parasitoids with their codes




       f female   m male   u unknown   n animal   i name   t fate   d badly   x skin
       p parasitoids   enter save   / find   ? all keys   escape back"
    `);
    expect(press('<enter>')).toEqual([
      {
        do: 'record',
        records: [
          {
            record: 'emergence',
            lot: '26-031-A',
            adults: [
              {sex: 'female', count: 2},
              {sex: 'male', count: 1},
            ],
            fate: 'kept',
            as: 'adult',
            exuviae: {code: 'EX-1'},
          },
          {record: 'parasitoid', lot: '26-031-A', count: 2, hosts: 1, taxon: 'Braconidae'},
        ],
        said: '26-031-A-1 to 26-031-A-3 and 26-031-A-p1 to 26-031-A-p2 written down',
        about: ['26-031-A'],
        saves: ['26-031-A-1', '26-031-A-2', '26-031-A-3', '26-031-A-p1', '26-031-A-p2'],
      },
    ]);
  });

  it('with no adult is a look that found none', async () => {
    const {press} = await driven(dir);
    press('<tab>e');
    expect(press('<enter>')).toMatchObject([
      {do: 'record', records: [{record: 'check', lot: '26-031-A', found: 0}]},
    ]);
  });
});

describe('behind a line', () => {
  it('everything that may be written down about a lot shows at once at 80 × 24', async () => {
    const {press, shown} = await driven(dir);
    press('<tab><enter>d');
    for (const {says} of acts.lot) expect(shown()).toContain(says);
  });

  it('a lot, a unit and a field sample ask for what they show', async () => {
    const {press} = await driven(dir);
    expect(press('<tab><enter>').map(effect => effect.do)).toEqual(['course', 'tree']);
    expect(press('o')).toEqual([{do: 'tree', key: 'down 26-031', code: '26-031', way: 'down'}]);
    expect(press('<escape>c3')).toMatchObject([{do: 'course', unit: 'C1'}]);
  });

  it('a plan is asked for by a day, an hour of it, or days from now, and for a share of the adults', async () => {
    const asked = async (text: string) => {
      const {press, app} = await driven(dir);
      press(`<tab><enter>p${text}<enter>`);
      return app().sheets.at(-1);
    };
    const plan = {ask: 'plan', lot: '26-031-A', adultsBy: '2026-07-04'};
    expect(await asked('2026-07-04')).toMatchObject({kind: 'answer', of: {...plan, share: 0.5}});
    expect(await asked('2026-07-04 10:00, 95 %')).toMatchObject({
      of: {...plan, share: 0.95, byInstant: Date.parse('2026-07-04T10:00:00+02:00')},
    });
    expect(await asked('22')).toMatchObject({of: {...plan, share: 0.5}});
    expect(await asked('someday')).toMatchObject({kind: 'lot'});
  });

  it('find leads to a sheet, or to what a key does', async () => {
    const {press, app, shown, send} = await driven(dir);
    expect(press('/salyx')).toEqual([]);
    expect(shown()).toContain('Everything recorded is being read');
    const desk = await openDesk(app().facts.desk.session, 'all');
    send({is: 'whole', whole: {revision: desk.room.revision, desk, finder: finderOf(desk)}});
    expect(shown()).toContain('26-031  field sample, beating, Salix');
    press('<enter>');
    expect(app().sheets.at(-1)).toEqual({kind: 'sample', code: '26-031', scroll: 0});
    press('<escape>/last request');
    expect(press('<enter>')).toEqual([{do: 'undo'}]);
  });

  it('all keys are listed from the table that they act by', async () => {
    const {press, shown} = await driven(dir, {columns: 100, rows: 50});
    press('?');
    expect(shown()).toContain('space         do the task under the cursor');
    expect(shown()).toContain('tab back-tab  from the round to the threads, and back');
    press('<escape>q');
  });
});
