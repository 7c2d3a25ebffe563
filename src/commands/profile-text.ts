// A profile, and what its check found, in words.

import {wrap} from '../exchange/pictures/fit.ts';
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {rateCurve} from '../exchange/pictures/rate-curve.ts';
import {textTable} from '../exchange/text-table.ts';
import type {Profile} from '../records/schema/index.ts';
import {sourceWords} from '../work/figures.ts';
import {landmarkWords} from '../work/landmark-words.ts';
import type {Deviation, ProfileCheck} from '../work/profile-check.ts';
import {profileCurve} from '../work/profile-curve.ts';
import {constantDays, type ProfileRow} from '../work/profile-tables.ts';

const TEMPERATURES_C = [10, 15, 20, 25, 30];
const CURVE_ROWS = 12;
const MOST_COLUMNS = 100;

export function listText(rows: readonly ProfileRow[]): string {
  return textTable(rows, [
    {head: 'profile', cell: row => row.profile},
    {head: 'name', cell: row => row.name},
    {head: 'rank', cell: row => row.rank},
    {head: 'reared in', cell: row => row.rearing.join(', ')},
    {head: 'days at 20 °C', right: true, cell: row => row.daysAt20?.toFixed(1) ?? '–'},
    {head: '', cell: row => (row.fromMemory ? 'some figures from memory' : '')},
  ]);
}

/** @param stage whose curve is drawn; all of them after each other where none is named */
export function showText(
  profile: Profile,
  stage: string | undefined,
  columns: number,
  glyphs: Glyphs,
): string {
  const width = Math.min(columns, MOST_COLUMNS);
  const curve = profileCurve(profile, stage);
  const picture = rateCurve(curve, {columns: width - 1, rows: CURVE_ROWS}, glyphs);
  const signs = curve.points.length === 0 ? '' : '; o as published';
  const parts = [
    `${profile.profile}: ${profile.name} (${profile.rank})`,
    wrap(profile.note ?? '', width).join('\n'),
    `Mean days at constant temperatures\n${daysTable(profile)}`,
    `How fast, ${curve.what}: days by temperature${signs}\n${textOfLines(picture)}`,
    ...('variation' in profile ? [] : [`Rate models\n${modelLines(profile)}`]),
    ...(profile.cautions.length === 0
      ? []
      : [`Take care\n${profile.cautions.flatMap(line => indented(line, width)).join('\n')}`]),
    `Sources\n${profile.sources.flatMap(source => indented(sourceWords(source), width)).join('\n')}`,
  ];
  return parts.filter(part => part !== '').join('\n\n');
}

function daysTable(profile: Profile): string {
  return textTable(constantDays(profile, TEMPERATURES_C), [
    {head: 'stage', cell: row => row.stage},
    ...TEMPERATURES_C.map((temperature, i) => ({
      head: `${temperature} °C`,
      right: true,
      cell: (row: {days: readonly (number | null)[]}) => row.days[i]?.toFixed(1) ?? '–',
    })),
  ]);
}

function modelLines({stages}: Extract<Profile, {rank: 'species' | 'genus'; published?: unknown}>): string {
  return stages
    .flatMap(each =>
      'rate' in each ? [`  ${each.stage}: ${each.rate.kind}, ${landmarkWords(each.rate)}`] : [],
    )
    .join('\n');
}

function indented(text: string, width: number): string[] {
  return wrap(text, width - 4).map((line, i) => `${i === 0 ? '  ' : '    '}${line}`);
}

/** Of many profiles a line each; of one all its figures. */
export function checkText(checks: readonly ProfileCheck[]): string {
  const [first] = checks;
  return checks.length === 1 && first !== undefined ? oneCheck(first) : allChecks(checks);
}

function oneCheck(check: ProfileCheck): string {
  const verdict = check.sound
    ? `${check.profile} is sound: ${check.name}`
    : `${check.profile} raises ${check.doubts.length === 1 ? 'a question' : `${check.doubts.length} questions`}: ${check.name}`;
  const questions = check.doubts.map(({field, why}) => `  ${field}: ${why}`).join('\n');
  const figures =
    check.deviations.length === 0
      ? 'It holds no published days to check it against.'
      : `Published days, recomputed: ${percent(check.meanDeviation)} off on average, ${percent(check.largestDeviation)} at most\n\n${deviationTable(check.deviations)}`;
  return [verdict, questions, figures].filter(part => part !== '').join('\n\n');
}

function allChecks(checks: readonly ProfileCheck[]): string {
  const checked = checks.filter(({deviations}) => deviations.length > 0);
  const rows = textTable(checked, [
    {head: 'profile', cell: row => row.profile},
    {head: 'published days', right: true, cell: row => String(row.deviations.length)},
    {head: 'off on average', right: true, cell: row => percent(row.meanDeviation)},
    {head: 'at most', right: true, cell: row => percent(row.largestDeviation)},
    {head: '', cell: row => (row.sound ? '' : 'see below')},
  ]);
  const without = checks.filter(({deviations}) => deviations.length === 0).map(({profile}) => profile);
  const questions = checks.flatMap(({profile, doubts}) =>
    doubts.map(({field, why}) => `  ${profile}, ${field}: ${why}`),
  );
  return [
    rows,
    without.length === 0
      ? ''
      : wrap(`No published days to check against: ${without.join(', ')}.`, 80).join('\n'),
    questions.length === 0 ? 'Nothing looks wrong.' : `Questions\n${questions.join('\n')}`,
  ]
    .filter(part => part !== '')
    .join('\n\n');
}

function deviationTable(deviations: readonly Deviation[]): string {
  return textTable(deviations, [
    {head: 'stage', cell: row => row.stage},
    {head: '°C', right: true, cell: row => String(row.temperature)},
    {head: 'published', right: true, cell: row => row.days.toFixed(2)},
    {head: 'recomputed', right: true, cell: row => row.recomputed?.toFixed(2) ?? 'never'},
    {head: 'off by', right: true, cell: row => percent(row.deviation)},
  ]);
}

function percent(share: number | null): string {
  if (share === null) return '–';
  const value = share * 100;
  return `${Math.abs(value) < 0.05 ? '0' : value.toFixed(1)} %`;
}
