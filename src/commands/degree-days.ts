import {type Command as Commander, InvalidArgumentError, Option} from 'commander';
import {readDay} from '../exchange/instants.ts';
import {chunksOf} from '../exchange/logger-file/chunks.ts';
import {readLoggerFile} from '../exchange/logger-file/logger-file.ts';
import type {Day} from '../records/civil.ts';
import {Refusal} from '../records/refusal.ts';
import {dailyMethods} from '../thermal/daily.ts';
import type {Cutoff} from '../thermal/degree-day.ts';
import {
  type DegreeDayMethod,
  type DegreeDayWishes,
  degreeDaysOfFile,
  degreeDaysOfOneDay,
} from '../work/degree-days.ts';
import {type Command, examples, numberOption, type Options, textOption} from './command.ts';
import {degreeDaysText, rowsText} from './degree-days-text.ts';
import {numberWord} from './words.ts';

const methods: readonly DegreeDayMethod[] = ['trace', ...dailyMethods];
const cutoffs: readonly Cutoff[] = ['horizontal', 'intermediate', 'vertical'];
const units = ['C', 'F'] as const;
const DEFAULT_MAX_GAP_HOURS = 3;

export const command: Command = {
  declare(command) {
    command
      .argument('[file]', 'readings, or days with minimum and maximum: comma, semicolon or tab')
      .requiredOption('--lower <L>', 'lower threshold', numberWord)
      .option('--upper <U>', 'upper threshold', numberWord)
      .addOption(
        new Option('--cutoff <how>', 'what happens above the upper threshold')
          .choices(cutoffs)
          .default('horizontal'),
      )
      .addOption(
        new Option('--method <name>', 'default: trace for readings, sine for minimum and maximum').choices(
          methods,
        ),
      )
      .addOption(new Option('--unit <C|F>', 'unit of thresholds and sums').choices(units).default('C'))
      .option(
        '--extremes <minimum maximum...>',
        'one day by its minimum and maximum, in place of a file',
        numbers,
      )
      .option(
        '--next-min <T>',
        'with --extremes: minimum of the day after, for the double methods',
        numberWord,
      );
    readingOptions(command);
    examples(
      command,
      'degree-days logger.csv --lower 10 --upper 30',
      'degree-days logger.csv --lower 50 --unit F --method sine --from 2026-05-01 --to 2026-05-31',
      'degree-days --extremes 4.5 18 --lower 7',
    );
  },
  async run(invocation, [file], options) {
    const wishes = wishesIn(options);
    const extremes = options.extremes as readonly number[] | undefined;
    if ((file === undefined) === (extremes === undefined))
      throw new InvalidArgumentError('give either a file or --extremes MIN MAX.');
    if (file === undefined) {
      const [minimum, maximum, ...more] = extremes ?? [];
      if (minimum === undefined || maximum === undefined || more.length > 0)
        throw new InvalidArgumentError('--extremes takes two numbers, the minimum and the maximum.');
      const answer = degreeDaysOfOneDay(minimum, maximum, numberOption(options, 'nextMin'), wishes);
      invocation.answer(answer, () => degreeDaysText(answer, wishes));
      return;
    }
    const read = readLoggerFile(chunksOf(file), file, {
      columns: textOption(options, 'columns'),
      format: textOption(options, 'format'),
      zone: textOption(options, 'zone') ?? 'UTC',
    });
    const answer = degreeDaysOfFile(read, wishes);
    const {rows, duplicates, rejected} = read;
    invocation.answer(
      {...answer, rows, duplicates, rejected},
      () => `${degreeDaysText(answer, wishes)}${rowsText(read)}`,
    );
  },
};

function readingOptions(command: Commander): void {
  command
    .option('--from <day>', 'first day that counts')
    .option('--to <day>', 'last day that counts')
    .option(
      '--max-gap <hours>',
      'a longer pause between readings adds nothing',
      numberWord,
      DEFAULT_MAX_GAP_HOURS,
    )
    .option('--zone <IANA>', 'zone of instants without an offset (default: UTC)')
    .option('--columns <text>', 'which column is what: time=1,temperature=2, or date=1,minimum=2,maximum=3')
    .option('--format <text>', 'how dates are written: dmy, mdy, ymd, or a luxon format');
}

function wishesIn(options: Options): DegreeDayWishes {
  return {
    lower: numberOption(options, 'lower') ?? Number.NaN,
    upper: numberOption(options, 'upper'),
    cutoff: cutoffs.find(cutoff => cutoff === options.cutoff) ?? 'horizontal',
    unit: units.find(unit => unit === options.unit) ?? 'C',
    method: methods.find(method => method === options.method),
    from: dayOption(options, 'from'),
    to: dayOption(options, 'to'),
    maxGapHours: numberOption(options, 'maxGap') ?? DEFAULT_MAX_GAP_HOURS,
  };
}

function numbers(word: string, earlier: readonly number[] = []): number[] {
  return [...earlier, numberWord(word)];
}

function dayOption(options: Options, name: string): Day | undefined {
  const word = textOption(options, name);
  const day = word === undefined ? undefined : readDay(word);
  if (word !== undefined && day === undefined)
    throw new Refusal(`"${word}" is no day`, `--${name}`, 'Write it like 2026-05-30.');
  return day;
}
