import {Argument} from 'commander';
import {type Column, textTable} from '../exchange/text-table.ts';
import {inOrder} from '../records/stage.ts';
import {type Desk, openDesk} from '../work/desk.ts';
import * as rows from '../work/list.ts';
import {type Command, examples} from './command.ts';

const or = (value: string | null): string => value ?? '–';
const day = (iso: string | null): string => (iso === null ? '–' : iso.slice(0, 10));
const span = ({from, to}: {from: string; to?: string | undefined}) =>
  to === undefined ? day(from) : `${day(from)} to ${day(to)}`;

const SAMPLES: Column<rows.SampleRow>[] = [
  {head: 'sample', cell: row => row.code},
  {head: 'method', cell: row => row.method},
  {head: 'collected', cell: row => span(row.collected)},
  {head: 'locality', cell: row => or(row.locality)},
  {head: 'host', cell: row => or(row.host)},
  {head: 'sorted', cell: row => or(row.sorting)},
  {head: 'lots', cell: row => row.lots.join(' ')},
];
const LOTS: Column<rows.LotRow>[] = [
  {head: 'lot', cell: row => row.code},
  {head: 'unit', cell: row => or(row.unit)},
  {head: 'taxon', cell: row => or(row.taxon)},
  {head: 'alive', right: true, cell: row => (row.alive === null ? 'hidden' : String(row.alive))},
  {
    head: 'stages',
    cell: row =>
      inOrder(row.stages)
        .map(([stage, n]) => `${n} ${stage}`)
        .join(', ') || '–',
  },
  {head: 'since', cell: row => day(row.since)},
  {head: 'closed', cell: row => day(row.closed)},
];
const UNITS: Column<rows.UnitRow>[] = [
  {head: 'unit', cell: row => row.code},
  {head: 'type', cell: row => row.type},
  {head: 'place', cell: row => row.place},
  {head: 'logger', cell: row => or(row.logger)},
  {head: 'lots', cell: row => row.lots.join(' ') || '–'},
];
const LOGGERS: Column<rows.LoggerRow>[] = [
  {head: 'logger', cell: row => row.code},
  {head: 'kind', cell: row => row.kind},
  {head: 'name', cell: row => or(row.name)},
  {head: 'readings', right: true, cell: row => String(row.readings)},
  {head: 'from', cell: row => day(row.from)},
  {head: 'to', cell: row => day(row.to)},
  {head: 'units', cell: row => row.units.join(' ') || '–'},
];
const SPECIMENS: Column<rows.SpecimenRow>[] = [
  {head: 'specimen', cell: row => row.code},
  {head: 'what', cell: row => row.kind},
  {head: 'name', cell: row => or(row.taxon)},
  {head: 'sex', cell: row => or(row.sex)},
  {head: 'day', cell: row => day(row.at)},
  {head: 'lot', cell: row => or(row.lot)},
  {head: 'sample', cell: row => row.sample},
];

/** Too long for columns: what is usual, then the fields. */
function methodLines({code, usually, fields}: rows.MethodRow): string[] {
  const lines = [usually, fields.join(' ')].filter(line => line !== '');
  return lines.map((line, i) => `${(i === 0 ? code : '').padEnd(12)}${line}`);
}

const tables = {
  methods: () => {
    const value = rows.methodRows();
    const lines = ['What is usual is common practice, no source.', ...value.flatMap(methodLines)];
    return {value, text: () => lines.join('\n')};
  },
  samples: (desk: Desk) => listed(rows.samples(desk), SAMPLES),
  lots: (desk: Desk) => listed(rows.lots(desk), LOTS),
  units: (desk: Desk) => listed(rows.units(desk), UNITS),
  loggers: (desk: Desk) => listed(rows.loggers(desk), LOGGERS),
  specimens: (desk: Desk) => listed(rows.specimens(desk), SPECIMENS),
} as const;

const isTable = (word: string | undefined): word is keyof typeof tables =>
  word !== undefined && Object.hasOwn(tables, word);

export const command: Command = {
  declare(command) {
    command
      .addArgument(new Argument('<what>', 'what to list').choices(Object.keys(tables)))
      .option('--all', 'with everything archived');
    examples(command, 'list lots', 'list specimens --all');
  },
  async run(invocation, [what], {all}) {
    const desk = await openDesk(
      invocation,
      all === true || what === 'specimens' || what === 'samples' ? 'all' : 'open',
    );
    const {value, text} = tables[isTable(what) ? what : 'lots'](desk);
    invocation.answer(value, () => text() || `there are no ${what} yet`);
  },
};

function listed<Row>(list: readonly Row[], columns: readonly Column<Row>[]) {
  return {value: list, text: () => (list.length === 0 ? '' : textTable(list, columns))};
}
