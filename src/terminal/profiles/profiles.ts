// The profiles at hand: what is known of whom, one line each.
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import type {LibraryEntry} from '../../work/library.ts';
import type {Binding} from '../bindings.ts';
import {fitSheet} from '../fit/fit.ts';
import {firstShown} from '../layout.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';

type Profiles = SheetOf<'profiles'>;

const keys: readonly Binding<Profiles, View, Step<Profiles>>[] = [
  {
    strokes: ['enter'],
    short: 'open',
    says: 'its curve, its days at temperatures, its sources',
    hint: true,
    disabled: (sheet, view) => (under(sheet, view) === undefined ? 'no profile is shown' : undefined),
    act: (sheet, view) => ({
      open: {kind: 'profile', code: under(sheet, view)!.profile, stage: 0, scroll: 0},
    }),
  },
  {
    strokes: ['f'],
    short: 'fit days',
    says: 'make a profile of days at temperatures: typed, from a table, or from your lots',
    hint: true,
    act: () => ({open: fitSheet()}),
  },
  {strokes: ['down', 'j'], short: 'down', says: 'the profile below', hint: true, act: moved(1)},
  {strokes: ['up', 'k'], short: 'up', says: 'the profile above', act: moved(-1)},
  {strokes: ['page-down'], short: 'page down', says: 'ten profiles down', act: moved(10)},
  {strokes: ['page-up'], short: 'page up', says: 'ten profiles up', act: moved(-10)},
];

export const profiles: SheetPart<Profiles> = {
  title: 'the profiles',
  keys,
  needs: (_, {library}) => (library === undefined ? [{do: 'library'}] : []),
  draw: drawProfiles,
};

function entriesOf({library}: View): readonly LibraryEntry[] {
  return library !== undefined && 'value' in library ? library.value : [];
}

function under({cursor}: Profiles, view: View): LibraryEntry | undefined {
  return entriesOf(view)[cursor];
}

function moved(by: number) {
  return (sheet: Profiles, view: View): Step<Profiles> => {
    const last = Math.max(0, entriesOf(view).length - 1);
    return {sheet: {...sheet, cursor: Math.max(0, Math.min(last, sheet.cursor + by))}};
  };
}

function drawProfiles(sheet: Profiles, view: View, room: Room): Page {
  const entries = entriesOf(view);
  const first = firstShown(sheet.cursor, entries.length, room.body);
  const chosen = under(sheet, view);
  const said =
    view.library === undefined
      ? [line(' The profiles are being read …', 'expected')]
      : 'failed' in view.library
        ? [line(` ${view.library.failed.message}`, 'late')]
        : [];
  return {
    head: 'profiles',
    aside: entries.length === 0 ? '' : `${sheet.cursor + 1} of ${entries.length}`,
    body: [
      ...said,
      ...entries.slice(first, first + room.body).map((entry, i): Line => {
        const here = first + i === sheet.cursor;
        const days = entry.daysAt20 === null ? '' : `${entry.daysAt20.toFixed(0)} days at 20 °C`;
        return [
          piece(` ${here ? view.glyphs.cursor : ' '} ${entry.profile.padEnd(26)}`, here ? 'cursor' : 'seen'),
          piece(` ${entry.rank.padEnd(8)} ${days.padEnd(19)} ${entry.own ? 'this room' : ''}`),
        ];
      }),
    ],
    detail: chosen === undefined ? [] : aboutLines(chosen),
  };
}

function aboutLines({name, rearing, whole, fromMemory}: LibraryEntry): Line[] {
  const stages = whole.stages.map(({stage}) => stage).join(', ');
  return [
    line(` ${name}${rearing.length === 0 ? '' : `, reared in ${rearing.join(', ')}`}`),
    line(` stages ${stages === '' ? 'not told' : stages}`),
    ...(fromMemory ? [line(' some figures are from memory', 'late')] : []),
    ...('undated' in whole ? [line(` no date: ${whole.undated.why}`)] : []),
  ];
}
