import {InvalidArgumentError} from 'commander';
import type {Agreement} from '../climate/agreement.ts';
import {doubtNames, doubtRules, limitOf} from '../climate/doubt-rules.ts';
import {textTable} from '../exchange/text-table.ts';
import {instantWords} from '../exchange/time-words.ts';
import {instantOf, MS_PER_DAY} from '../records/entry.ts';
import type {Logger} from '../records/state.ts';
import {type Comparison, compareLoggers} from '../work/compare-loggers.ts';
import {type Desk, openDesk} from '../work/desk.ts';
import {type ExtremesRow, type ExtremesStanding, extremesRows} from '../work/extremes.ts';
import {
  type DoubtRow,
  doubtRows,
  loggerReadings,
  type ReadingRow,
  readingRows,
} from '../work/logger-readings.ts';
import {type SaltTest, saltTest} from '../work/salt-test.ts';
import {spanAsked} from '../work/span-asked.ts';
import {type Command, examples, textOption} from './command.ts';
import {numberWord} from './words.ts';

const DAYS_SHOWN = 1;
const DAYS_JUDGED = 30;

export const command: Command = {
  declare(command) {
    command
      .argument('<logger>', 'a logger')
      .option('--doubts', 'only what is hardly true, by which rule, and what became of it')
      .option('--against <logger>', 'compare with another logger in the same place')
      .option('--salt <formula>', 'check its humidity against a salt solution it lay over, such as NaCl')
      .option(
        '--days <n>',
        `how many days back (default: ${DAYS_SHOWN}, to judge ${DAYS_JUDGED})`,
        numberWord,
      )
      .option('--from <instant>', 'in place of --days')
      .option('--to <instant>', 'default: now')
      .option('--csv', 'as comma-separated text');
    examples(
      command,
      'readings L1 --days 7',
      'readings L1 --doubts',
      'readings L1 --against L2 --days 60',
      'readings L1 --salt NaCl --from 2026-06-01T18:00 --to 2026-06-02T08:00',
      'readings L1 --from 2026-05-01 --csv > L1.csv',
    );
  },
  async run(invocation, [code = ''], options) {
    const desk = await openDesk(invocation);
    const against = textOption(options, 'against');
    const salt = textOption(options, 'salt');
    if ([options.doubts, against, salt].filter(given => given !== undefined).length > 1)
      throw new InvalidArgumentError('give one of --doubts, --against and --salt.');
    const judges = options.doubts === true || against !== undefined;
    const {fromDays, toDays} = spanAsked(options, judges ? DAYS_JUDGED : DAYS_SHOWN, desk);
    if (against !== undefined) {
      const answer = await compareLoggers(desk, code, against, fromDays, toDays);
      invocation.answer(answer, () => comparisonText(answer));
      return;
    }
    if (salt !== undefined) {
      const answer = await saltTest(desk, code, salt, fromDays, toDays);
      invocation.answer(answer, () => saltText(answer));
      return;
    }
    const found = await loggerReadings(desk, code, fromDays, toDays);
    const ends = {
      logger: code,
      from: desk.civil.iso(fromDays * MS_PER_DAY),
      to: desk.civil.iso(toDays * MS_PER_DAY),
    };
    if (options.doubts === true) {
      const doubts = doubtRows(found, desk);
      const rules = Object.fromEntries(
        doubtNames.map(name => [name, limitOf(name, found.logger.rules) ?? 'off']),
      );
      invocation.answer({...ends, rules, doubts}, () => doubtsText(doubts, found.logger, desk));
      return;
    }
    const readings = readingRows(found, desk);
    const extremes = extremesRows(desk, code, {fromDays, toDays});
    invocation.answer({...ends, readings, extremes}, () =>
      options.csv === true
        ? csvOf(readings)
        : extremes.length === 0
          ? readingsText(readings, desk)
          : [
              ...(readings.length === 0 ? [] : [readingsText(readings, desk)]),
              extremesText(extremes, desk),
            ].join('\n\n'),
    );
  },
};

function readingsText(readings: readonly ReadingRow[], {civil, now}: Desk): string {
  if (readings.length === 0) return 'no readings in this time';
  return textTable(readings, [
    {head: 'when', cell: row => instantWords(instantOf(row.at), civil, now)},
    {head: '°C', right: true, cell: row => row.temperature?.toFixed(1) ?? '–'},
    {head: '%', right: true, cell: row => row.humidity?.toFixed(0) ?? '–'},
    {head: '', cell: row => [stateWords[row.state], row.rule ?? ''].filter(word => word !== '').join(', ')},
  ]);
}

function extremesText(extremes: readonly ExtremesRow[], {civil, now}: Desk): string {
  const when = (iso: string) => instantWords(instantOf(iso), civil, now);
  const resetWords = (reset: boolean | null) =>
    reset === null ? 'reset not said' : reset ? '' : 'not reset';
  const table = textTable(extremes, [
    {head: 'from', cell: row => when(row.from)},
    {head: 'to', cell: row => when(row.to)},
    {head: 'coolest', right: true, cell: row => row.minimum.toFixed(1)},
    {head: 'warmest °C', right: true, cell: row => row.maximum.toFixed(1)},
    {head: 'showed', right: true, cell: row => row.now?.toFixed(1) ?? '–'},
    {
      head: '',
      cell: row => [STANDING[row.state], resetWords(row.reset)].filter(word => word !== '').join(', '),
    },
  ]);
  const said = extremes.flatMap(({what}) => what ?? []);
  return said.length === 0 ? table : [table, '', ...said].join('\n');
}

const STANDING: Readonly<Record<ExtremesStanding, string>> = {
  drawn: '',
  misread: 'misread: not in the course',
  bounds: 'bounds only',
};

const stateWords = {
  read: '',
  masked: 'masked',
  'set-aside': 'set aside',
  look: 'look at it',
  trusted: 'trusted',
} as const;

/** As `import` reads it back. */
function csvOf(readings: readonly ReadingRow[]): string {
  const rows = readings.map(({at, temperature, humidity, state, rule}) =>
    [at, temperature ?? '', humidity ?? '', state, rule ?? ''].join(','),
  );
  return ['time,temperature_C,humidity_percent,state,rule', ...rows].join('\n');
}

function doubtsText(doubts: readonly DoubtRow[], {code, rules}: Logger, {civil, now}: Desk): string {
  const words = (iso: string) => instantWords(instantOf(iso), civil, now);
  const hits = doubts.flatMap(({rule, from, to, readings, what, state}) => [
    `${rule.padEnd(12)} ${words(from)}${readings === 1 ? '' : ` to ${words(to)}`}: ${what}`,
    `${''.padEnd(12)} ${stateWords[state]}; ${readings} reading${readings === 1 ? '' : 's'}${
      state === 'look'
        ? `; teneral mask ${code} ${from} ${to} --why "…"`
        : state === 'set-aside'
          ? `; true all the same? teneral mask ${code} ${from} ${to} --lift --why "…"`
          : ''
    }`,
  ]);
  const table = textTable(doubtNames, [
    {head: 'rule', cell: name => name},
    {
      head: 'limit',
      right: true,
      cell: name => {
        const limit = limitOf(name, rules);
        return limit === undefined ? 'off' : `${limit} ${doubtRules[name].unit}`;
      },
    },
    {head: '', cell: name => (rules?.[name] === undefined ? '' : 'set')},
    {head: 'doubts', cell: name => doubtRules[name].says},
    {head: '', cell: name => stateWords[doubtRules[name].consequence]},
  ]);
  return [
    ...(hits.length === 0 ? [`nothing of ${code} is doubted in this time`] : hits),
    '',
    table,
    '',
    `teneral logger ${code} --rule spike=3 --rule stuck=off sets a rule.`,
  ].join('\n');
}

function comparisonText({logger, against, temperature, humidity}: Comparison): string {
  return [
    `${logger} against ${against}, ${temperature.overlapDays.toFixed(1)} days in which both read`,
    ...agreementLines('temperature', temperature, '°C', 2),
    ...(humidity === null ? [] : agreementLines('humidity', humidity, '%', 1)),
  ].join('\n');
}

function agreementLines(what: string, agreement: Agreement, unit: string, digits: number): string[] {
  const {offset, drift, driftSe, limits, scatter, n} = agreement;
  const signed = (value: number) => `${value > 0 ? '+' : ''}${value.toFixed(digits)}`;
  const drifts =
    drift === null || driftSe === null
      ? 'too short to tell a drift'
      : `drift ${signed(drift)} ± ${driftSe.toFixed(digits)} ${unit} in 30 days${Math.abs(drift) > 2 * driftSe ? '' : ', not to be told from none'}`;
  return [
    `  ${what.padEnd(12)} ${signed(offset)} ${unit}; 19 of 20 differences ${signed(limits[0])} to ${signed(limits[1])}; n ${n}`,
    `  ${''.padEnd(12)} ${drifts}; scatter ${scatter.toFixed(digits)} ${unit}`,
  ];
}

function saltText({logger, salt, temperature, readings, steadyC}: SaltTest): string {
  const {humidity, uncertainty, sensor, source} = salt;
  const {reads = Number.NaN, error = Number.NaN, withinUncertainty = false} = sensor ?? {};
  return [
    `${logger} over ${salt.salt}: ${reads.toFixed(1)} % at ${temperature.toFixed(1)} °C, where the salt keeps ${humidity.toFixed(1)} ± ${uncertainty.toFixed(1)} %`,
    withinUncertainty
      ? '  it agrees within the uncertainty of the salt'
      : `  it shows ${Math.abs(error).toFixed(1)} % too ${error > 0 ? 'much' : 'little'}`,
    `  ${readings} readings; the temperature stayed within ${steadyC.toFixed(1)} °C${steadyC > 1 ? ': too unsteady for a test, 1 °C is asked for (OIML R 121)' : ''}`,
    `  ${source}`,
  ].join('\n');
}
