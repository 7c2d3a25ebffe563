import {expect, it} from 'vitest';
import {civil} from '../../../src/exchange/civil.ts';
import {ASCII, UNICODE} from '../../../src/exchange/pictures/glyphs.ts';
import {textOf} from '../../../src/exchange/pictures/line.ts';
import {type DayColumn, type ThreadData, thread} from '../../../src/exchange/pictures/thread.ts';
import {threadAxis} from '../../../src/exchange/pictures/thread-axis.ts';
import {MS_PER_DAY} from '../../../src/records/entry.ts';

const berlin = civil('Europe/Berlin');
const at = (day: string, time = '12:00') => berlin.at(day, time) / MS_PER_DAY;

/** Three weeks from Monday 1 June 2026; weekends are closed. */
const columns: DayColumn[] = Array.from({length: 21}, (_, i) => {
  const day = berlin.addDays('2026-06-01', i);
  const closed = ['sat', 'sun'].includes(berlin.weekdayOf(day));
  return {day, fromDays: at(day, '00:00'), toDays: at(berlin.addDays(day, 1), '00:00'), closed};
});
const nowDays = at('2026-06-09', '08:40');

const chances = [0.01, 0.05, 0.15, 0.3, 0.15, 0.05, 0.01];
const larvae: ThreadData = {
  columns,
  nowDays,
  startedDays: at('2026-06-02'),
  shares: columns.map(({day}) =>
    day < '2026-06-11' ? {'larva-4': 0.4, 'larva-5': 0.6} : {pupa: 0.9, adult: 0.1},
  ),
  seen: [
    {atDays: at('2026-06-02'), stage: 'larva-4'},
    {atDays: at('2026-06-08'), stage: 'larva-5'},
  ],
  hidden: false,
  perDay: chances.map((probability, i) => {
    const day = berlin.addDays('2026-06-14', i);
    return {fromDays: at(day, '00:00'), toDays: at(berlin.addDays(day, 1), '00:00'), probability};
  }),
  came: [],
  animals: 10,
  nextCheckDays: at('2026-06-12', '09:00'),
};

const drawn = (data: ThreadData, glyphs = UNICODE) => {
  const {line, below} = thread(data, glyphs);
  return [textOf(threadAxis(columns, nowDays, berlin, glyphs)), textOf(line), textOf(below ?? [])].join('\n');
};

it('a thread reads from stages over now to the emergence, with closed days and the planned check', () => {
  expect(`\n${drawn(larvae)}`).toMatchInlineSnapshot(`
    "
    1 Jun┊┊ ┃    ┊┊15 Jun┊
     4555555┃55pp┊░▒▓█▓▒░┊
                ^"
  `);
});

it('a thread in ASCII says the same', () => {
  expect(`\n${drawn(larvae, ASCII)}`).toMatchInlineSnapshot(`
    "
    1 Jun'' |    ''15 Jun'
     4555555|55pp'.:+#+:.'
                ^"
  `);
});

it('what was seen, computed and expected are told apart', () => {
  expect(thread(larvae, UNICODE).line).toMatchInlineSnapshot(`
    [
      {
        "kind": "plain",
        "text": " ",
      },
      {
        "kind": "seen",
        "text": "4",
      },
      {
        "kind": "plain",
        "text": "55555",
      },
      {
        "kind": "seen",
        "text": "5",
      },
      {
        "kind": "mark",
        "text": "┃",
      },
      {
        "kind": "plain",
        "text": "5",
      },
      {
        "kind": "expected",
        "text": "5pp",
      },
      {
        "kind": "mark",
        "text": "┊",
      },
      {
        "kind": "emergence",
        "text": "░▒▓█▓▒░",
      },
      {
        "kind": "mark",
        "text": "┊",
      },
    ]
  `);
});

it('adults that came out are shaded by their share and counted below, ten and more as +', () => {
  const came = [
    {atDays: at('2026-06-05'), count: 1},
    {atDays: at('2026-06-08'), count: 12},
  ];
  expect(`\n${drawn({...larvae, came, animals: 20})}`).toMatchInlineSnapshot(`
    "
    1 Jun┊┊ ┃    ┊┊15 Jun┊
     455▒55█┃55pp┊░▒▓█▓▒░┊
        1  +    ^"
  `);
});

it('hidden animals are dots until adults may come; nothing is drawn after a lot was closed', () => {
  const hidden = {...larvae, hidden: true, shares: columns.map(() => undefined), seen: []};
  expect(`\n${drawn(hidden)}`).toMatchInlineSnapshot(`
    "
    1 Jun┊┊ ┃    ┊┊15 Jun┊
      · ·┊· ┃· · ·░▒▓█▓▒░·
                ^"
  `);
  expect(textOf(thread({...larvae, closedDays: at('2026-06-05')}, UNICODE).line)).toBe(
    ' 4555┊┊ ┃    ┊┊     ┊┊',
  );
});

it('a column of several days shows the mean chance per day', () => {
  const weeks = [0, 7, 14].map(k => ({...columns[k]!, toDays: columns[k + 6]!.toDays, closed: false}));
  expect(textOf(thread({...larvae, columns: weeks, shares: []}, UNICODE).line)).toMatchInlineSnapshot(
    `"4┃5▓"`,
  );
});
