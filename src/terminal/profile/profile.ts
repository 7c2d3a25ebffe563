// A profile: how fast it develops by temperature, stage by stage, and where that is known from.
import {wrap} from '../../exchange/pictures/fit.ts';
import {type Line, line} from '../../exchange/pictures/line.ts';
import {rateCurve} from '../../exchange/pictures/rate-curve.ts';
import {textTable} from '../../exchange/text-table.ts';
import {profileDoubts} from '../../records/profile-doubts.ts';
import type {Profile as KnownProfile} from '../../records/schema/index.ts';
import {sourceWords} from '../../work/figures.ts';
import {landmarkWords} from '../../work/landmark-words.ts';
import {profileCurve} from '../../work/profile-curve.ts';
import {constantDays} from '../../work/profile-tables.ts';
import type {Binding} from '../bindings.ts';
import {fitSheet} from '../fit/fit.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';

type Profile = SheetOf<'profile'>;
type Key = Binding<Profile, View, Step<Profile>>;

const TEMPERATURES_C = [10, 15, 20, 25, 30];
/** At least so many rows of a curve. */
const LEAST_ROWS = 8;

const stageKey = (stroke: string, by: number, short: string): Key => ({
  strokes: [stroke],
  short,
  says: by > 0 ? 'the curve of the next stage' : 'the curve of the stage before',
  hint: true,
  disabled: (sheet, view) => (stagesOf(sheet, view).length < 2 ? 'there is one curve only' : undefined),
  act: (sheet, view) => {
    const count = stagesOf(sheet, view).length + 1;
    return {sheet: {...sheet, stage: (sheet.stage + by + count) % count, scroll: 0}};
  },
});

const keys: readonly Key[] = [
  stageKey('right', 1, 'next stage'),
  stageKey('left', -1, 'stage before'),
  {
    strokes: ['f'],
    short: 'fit days',
    says: 'give a stage another rate, from days at temperatures',
    hint: true,
    disabled: (sheet, view) => {
      const profile = profileOf(sheet, view);
      return profile === undefined || 'variation' in profile || 'undated' in profile
        ? 'a group of unlike members has no rates of its own'
        : undefined;
    },
    act: (sheet, view) => ({
      open: fitSheet({profile: sheet.code, stage: stagesOf(sheet, view)[sheet.stage - 1]}),
    }),
  },
  ...scrollKeys<Profile>(),
];

export const profile: SheetPart<Profile> = {
  title: 'a profile',
  keys,
  needs: (_, {library}) => (library === undefined ? [{do: 'library'}] : []),
  draw: drawProfile,
};

function profileOf({code}: Profile, {library}: View): KnownProfile | undefined {
  return library !== undefined && 'value' in library
    ? library.value.find(entry => entry.profile === code)?.whole
    : undefined;
}

function stagesOf(sheet: Profile, view: View): string[] {
  const known = profileOf(sheet, view);
  return known === undefined || 'undated' in known ? [] : known.stages.map(({stage}) => stage);
}

function drawProfile(sheet: Profile, view: View, room: Room): Page {
  const known = profileOf(sheet, view);
  if (known === undefined)
    return {
      head: sheet.code,
      aside: '',
      body: [line(' The profile is being read …', 'expected')],
      detail: [],
    };
  const stage = stagesOf(sheet, view)[sheet.stage - 1];
  const lines = [...curveLines(known, stage, view, room), ...wordLines(known, room.columns)];
  return {
    head: `${known.profile} ${view.glyphs.dot} ${known.name}${stage === undefined ? '' : ` ${view.glyphs.dot} ${stage}`}`,
    aside: whereScrolled(lines.length, sheet.scroll, room.body),
    body: scrolled(lines, sheet.scroll, room.body),
    detail: profileDoubts(known)
      .map(({field, why}) => line(` ${field}: ${why}`, 'late'))
      .concat(wrap(known.note ?? '', room.columns - 2).map(text => line(` ${text}`))),
  };
}

function curveLines(known: KnownProfile, stage: string | undefined, view: View, room: Room): Line[] {
  if ('undated' in known)
    return wrap(` ${known.undated.why}`, room.columns - 2).map(text => line(` ${text}`));
  if (view.plain) return [];
  const curve = profileCurve(known, stage);
  const signs = curve.points.length === 0 ? '' : ', o as published';
  return [
    line(` ${curve.what}: days by temperature${signs}`, 'heading'),
    ...rateCurve(curve, {columns: room.columns - 2, rows: Math.max(LEAST_ROWS, room.body - 1)}, view.glyphs),
  ];
}

function wordLines(known: KnownProfile, columns: number): Line[] {
  const hanging = (text: string) =>
    wrap(text, columns - 6).map((part, i) => line(`${i === 0 ? '  ' : '    '}${part}`));
  const days = textTable(constantDays(known, TEMPERATURES_C), [
    {head: 'stage', cell: row => row.stage},
    ...TEMPERATURES_C.map((temperature, i) => ({
      head: `${temperature} °C`,
      right: true,
      cell: (row: {days: readonly (number | null)[]}) => row.days[i]?.toFixed(1) ?? '–',
    })),
  ]);
  const models =
    'variation' in known || 'undated' in known
      ? []
      : known.stages.map(({stage, rate}) => `${stage}: ${rate.kind}, ${landmarkWords(rate)}`);
  return [
    ...('undated' in known
      ? []
      : [
          [],
          line(' mean days at constant temperatures', 'heading'),
          ...days.split('\n').map(text => line(`  ${text}`)),
        ]),
    ...(models.length === 0 ? [] : [[], line(' rate models', 'heading'), ...models.flatMap(hanging)]),
    ...(known.cautions.length === 0
      ? []
      : [[], line(' take care', 'heading'), ...known.cautions.flatMap(hanging)]),
    [],
    line(' sources', 'heading'),
    ...known.sources.flatMap(source => hanging(sourceWords(source))),
  ];
}
