// What became of a lot, in lines of text: for the command and for the sheet of the lot alike.
import {dayWords, instantWords} from '../exchange/time-words.ts';
import {type Animal, animalsOf} from '../records/animals.ts';
import type {LifeTable, LifeTableRow} from '../records/life-table.ts';
import type {Outcome, Share} from '../records/outcome.ts';
import {counted} from '../records/plain-words.ts';
import {stageInWords} from '../records/stage-words.ts';
import type {Lot} from '../records/state.ts';
import type {Desk} from './desk.ts';

/** Sections with their titles; a lot of which nothing can be told yet has none. */
export interface Section {
  readonly title: string;
  readonly lines: readonly string[];
}

export function outcomeSections(lot: Lot, outcome: Outcome, desk: Desk): Section[] {
  const sections: Section[] = [
    {title: 'what became of it', lines: shares(outcome)},
    {title: 'adults by day', lines: emergence(outcome, desk)},
    {title: 'days in a stage', lines: durations(outcome)},
    {title: 'life table', lines: outcome.lifeTable === null ? [] : lifeTableLines(outcome.lifeTable)},
    {title: 'animals followed singly', lines: animalsOf(lot).map(animal => animalLine(animal, desk))},
  ];
  return sections.filter(({lines}) => lines.length > 0);
}

function shares({
  survival,
  parasitism,
  products: {adults, parasitoids},
  sexes,
  females,
  alive,
  exact,
  lot,
}: Outcome): string[] {
  const by = [
    ...(sexes.female + sexes.male > 0 ? [`${sexes.female} females, ${sexes.male} males`] : []),
    ...(sexes.unknown > 0 ? [`${sexes.unknown} not sexed`] : []),
  ];
  return [
    row('became adult', survival) +
      (alive > 0 ? `; ${alive} ${alive === 1 ? 'is' : 'are'} alive as far as anybody knows` : ''),
    ...(by.length === 0 ? [] : [`${'sexes'.padEnd(14)}${by.join(', ')}${percent(females, ' female')}`]),
    ...(parasitism.ofAll.count === 0
      ? []
      : [
          `${row('parasitised', parasitism.ofAll)}; ${parasitism.ofKnown.count} of ${parasitism.ofKnown.of} whose end is known${percent(parasitism.ofKnown)}`,
        ]),
    ...(parasitoids === 0
      ? []
      : [
          `${'products'.padEnd(14)}${counted(adults, 'adult')} + ${counted(parasitoids, 'parasitoid')} = ${counted(adults + parasitoids, 'specimen')}`,
        ]),
    ...(exact ? [] : [`Numbers of ${lot} are estimates or a lower bound, and so are these shares.`]),
  ];
}

function row(name: string, share: Share): string {
  const of = share.share === null ? '; of how many nobody knows' : ` of ${share.of}${percent(share)}`;
  return `${name.padEnd(14)}${share.count}${of}`;
}

function percent({share}: Share, of = ''): string {
  return share === null ? '' : `, ${(share * 100).toFixed(1)} %${of}`;
}

const BAR = 24;

function emergence({emergence: days, half}: Outcome, {civil, now}: Desk): string[] {
  const most = Math.max(1, ...days.map(({female, male, unknown}) => female + male + unknown));
  const lines = days.map(({day, female, male, unknown, cumulative}) => {
    const all = female + male + unknown;
    const sexes = [
      ...(female > 0 ? [`${female} f`] : []),
      ...(male > 0 ? [`${male} m`] : []),
      ...(unknown > 0 ? [`${unknown} ?`] : []),
    ].join(' ');
    const bar = '#'.repeat(Math.max(1, Math.round((all / most) * BAR)));
    const share = `${Math.round(cumulative * 100)} %`;
    return `${dayWords(day, civil, now).padEnd(18)}${sexes.padEnd(12)}${share.padStart(5)}  ${bar}`;
  });
  if (half.all === null) return [];
  const when = (at: number | null, who: string) =>
    at === null ? [] : [`${who} ${instantWords(at, civil, now)}`];
  const halves = [
    ...when(half.all, 'half of them out'),
    ...when(half.female, 'of the females'),
    ...when(half.male, 'of the males'),
  ];
  return [...lines, halves.join(', ')];
}

function durations({durations: known}: Outcome): string[] {
  return known.map(({stage, days, withinDays, animals, how}) => {
    const from = how === 'singly' ? `mean of ${animals} followed singly` : `by halves of ${animals}`;
    return `${stageInWords(stage).padEnd(14)}${days.toFixed(1)} d, ± ${withinDays.toFixed(1)} for the looks; ${from}`;
  });
}

const HEADS = ['stage', 'entered', 'died', 'paras.', 'out', 'alive', 'mortality', 'k'] as const;

function lifeTableLines({rows, adults, survival, k}: LifeTable): string[] {
  const cells = (row: LifeTableRow) => [
    stageInWords(row.stage),
    ...[row.entered, row.died, row.parasitised, row.withdrawn, row.alive].map(String),
    row.mortality === undefined ? '-' : row.mortality.died.toFixed(3),
    row.mortality === undefined ? '-' : finite(row.mortality.k),
  ];
  const notSaid = rows.reduce((sum, {stageNotSaid}) => sum + stageNotSaid, 0);
  return [
    ...[HEADS, ...rows.map(cells)].map(line =>
      line
        .map((cell, i) => aligned(cell, i))
        .join('')
        .trimEnd(),
    ),
    `${'adults'.padEnd(14)}${String(adults).padStart(8)}${survival === undefined ? '' : `   survival ${survival.toFixed(3)}, k ${finite(k ?? 0)} (natural logarithm)`}`,
    ...(notSaid === 0
      ? []
      : [`Of ${notSaid} nobody said the stage; they stand where the daybook took them from.`]),
  ];
}

function aligned(cell: string, column: number): string {
  return column === 0 ? cell.padEnd(14) : cell.padStart(column === 6 ? 11 : 8);
}

function finite(k: number): string {
  return Number.isFinite(k) ? k.toFixed(3) : 'all died';
}

function animalLine({animal, seen, weights, photos, end}: Animal, {civil, now}: Desk): string {
  const last = seen.at(-1);
  const weight = weights.at(-1);
  const said = [
    last === undefined ? undefined : `${stageInWords(last.stage)} since ${instantWords(last.at, civil, now)}`,
    weight === undefined ? undefined : `${weight.mg} mg`,
    photos.length === 0 ? undefined : `photo ${photos.at(-1)}`,
    end === undefined
      ? undefined
      : `${end.how} ${instantWords(end.at, civil, now)}${end.specimen === undefined ? '' : `, ${end.specimen}`}`,
  ].filter(part => part !== undefined);
  return `${animal.padEnd(6)}${said.join('; ') || 'seen'}`;
}
