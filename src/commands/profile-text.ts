// A profile, and what its check found, in words.

import {wrap} from '../exchange/pictures/fit.ts';
import type {Glyphs} from '../exchange/pictures/glyphs.ts';
import {textOfLines} from '../exchange/pictures/line.ts';
import {rateCurve} from '../exchange/pictures/rate-curve.ts';
import {textTable} from '../exchange/text-table.ts';
import type {GroupProfile, Profile, TaxonProfile, UndatedProfile} from '../records/schema/index.ts';
import {sourceWords} from '../work/figures.ts';
import {landmarkWords} from '../work/landmark-words.ts';
import type {Deviation, ProfileCheck} from '../work/profile-check.ts';
import {profileCurve} from '../work/profile-curve.ts';
import {constantDays, type ProfileRow} from '../work/profile-tables.ts';
import {fromMemory} from '../work/profiles.ts';
import {indented, keepingText} from './profile-keeping-text.ts';

const TEMPERATURES_C = [10, 15, 20, 25, 30];
const CURVE_ROWS = 12;
const MOST_COLUMNS = 100;
/** z beyond which a tenth lies on either side. */
const FOUR_IN_FIVE = 1.2816;

/** The code is the name, so the name is not said again. */
export function listText(rows: readonly ProfileRow[]): string {
  const table = textTable(rows, [
    {head: 'profile', cell: row => row.profile},
    {head: 'rank', cell: row => row.rank},
    {
      head: 'days at 20 °C',
      right: true,
      cell: row => `${row.daysAt20?.toFixed(1) ?? '–'}${row.fromMemory ? '*' : ' '}`,
    },
    {head: 'kept in', cell: row => row.rearing.join(', ')},
  ]);
  const memory = rows.some(row => row.fromMemory) ? ['* some of its figures are from memory'] : [];
  const none = rows.some(row => row.daysAt20 === null) ? ['– no honest date: its moults are counted'] : [];
  return [table, ...memory, ...none].join('\n');
}

/** @param stage whose curve is drawn; all of them after each other where none is named */
export function showText(
  profile: Profile,
  stage: string | undefined,
  columns: number,
  glyphs: Glyphs,
): string {
  const width = Math.min(columns, MOST_COLUMNS);
  const parts = [
    `${profile.profile}: ${profile.name} (${profile.rank})`,
    ...(fromMemory(profile) ? ['Some of its figures are from memory: see the sources.'] : []),
    wrap(profile.note ?? '', width).join('\n'),
    ...('undated' in profile ? [undatedText(profile, width)] : datedParts(profile, stage, width, glyphs)),
    keepingText(profile, width),
    ...(profile.cautions.length === 0
      ? []
      : [`Take care\n${profile.cautions.flatMap(line => indented(line, width)).join('\n')}`]),
    `Sources\n${profile.sources.flatMap(source => indented(sourceWords(source), width)).join('\n')}`,
  ];
  return parts.filter(part => part !== '').join('\n\n');
}

function datedParts(
  profile: TaxonProfile | GroupProfile,
  stage: string | undefined,
  width: number,
  glyphs: Glyphs,
): string[] {
  const curve = profileCurve(profile, stage);
  const picture = rateCurve(curve, {columns: width - 1, rows: CURVE_ROWS}, glyphs);
  const signs = curve.points.length === 0 ? '' : '; o as published';
  return [
    `Mean days at constant temperatures\n${daysTable(profile)}`,
    `How fast, ${curve.what}: days by temperature${signs}\n${textOfLines(picture)}`,
    ...('variation' in profile ? [variationText(profile)] : [`Rate models\n${modelLines(profile)}`]),
  ];
}

/** How far the members of a group lie apart: what four of five of its species are within at 20 °C. */
function variationText({variation: {lnDaysAt20, lowerC}, paceSd}: GroupProfile): string {
  const sd = Math.hypot(lnDaysAt20.sd, paceSd);
  const [from, to] = [-FOUR_IN_FIVE, FOUR_IN_FIVE].map(z => Math.exp(lnDaysAt20.mean + z * sd).toFixed(0));
  return `Its kinds\n  four of five take ${from} to ${to} days at 20 °C; lower threshold ${lowerC.mean.toFixed(1)} ± ${lowerC.sd.toFixed(1)} °C`;
}

function undatedText({name, undated, stages}: UndatedProfile, width: number): string {
  const counted = stages.flatMap(({stage, instars}) =>
    instars === undefined ? [] : [`Count moults: ${instars[0]} to ${instars[1]} instars as ${stage}.`],
  );
  return wrap([`${name} get no date: ${undated.why}`, ...counted].join(' '), width).join('\n');
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

function modelLines({stages}: TaxonProfile): string {
  return stages.map(({stage, rate}) => `  ${stage}: ${rate.kind}, ${landmarkWords(rate)}`).join('\n');
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
