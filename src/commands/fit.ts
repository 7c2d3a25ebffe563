import {InvalidArgumentError, Option} from 'commander';
import {daysTable} from '../exchange/days-table.ts';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {textIn} from '../exchange/text-file.ts';
import {Refusal} from '../records/refusal.ts';
import {bestModel, compared, curveFit, curveKinds, type FitWishes, lineFit} from '../work/fit.ts';
import {type FitInput, inputOfLots, inputOfTable, inputTyped} from '../work/fit-input.ts';
import {fitSaved} from '../work/fit-saved.ts';
import {type Command, examples, type Invocation, type Options, textOption} from './command.ts';
import {comparedText, curveText, lineText, lotsText, savedText} from './fit-text.ts';
import {numberWord} from './words.ts';

const savedKinds = ['degree-day', 'table', ...curveKinds] as const;

export const command: Command = {
  declare(command) {
    command
      .argument(
        '[table...]',
        'a file with the columns temperature, days (and sd, n, stage), or typed: 15=55.6 20=31 25=19.4',
      )
      .addOption(
        new Option('--method <line>', 'least squares of the rates, or the reduced major axis of D·T on D')
          .choices(['linear', 'rma'])
          .default('linear'),
      )
      .addOption(new Option('--model <kind>', 'fit this curve in place of a line').choices(savedKinds))
      .option('--compare', 'all models beside each other')
      .option('--weighted', 'count rows by their sd and n')
      .option('--from-c <°C>', 'leave out what is colder', numberWord)
      .option('--to-c <°C>', 'leave out what is warmer', numberWord)
      .option('--stage <stage>', 'the stage that the days are of')
      .option('--lots', 'from lots of the room: name lots, or profiles whose lots count')
      .option('--save <profile>', 'keep it as the stage’s rate in this profile of the room')
      .option('--source <citation>', 'with --save: where the days come from')
      .option('--locator <text>', 'with --save: page or table')
      .option('--name <name>', 'with --save: what a new profile is of')
      .addOption(new Option('--rank <rank>', 'with --save: of a new profile').choices(['species', 'genus']))
      .option('--sure', 'with --save: also where a figure looks wrong')
      .option('--cv <share>', 'with --save: spread among individuals, such as 0.1', numberWord);
    examples(
      command,
      'fit days.csv',
      'fit 15=40 20=21.5 25=13.2 30=12.1 --to-c 25 --method rma',
      'fit days.csv --compare',
      'fit --lots pieris-rapae --stage pupa',
      'fit days.csv --save my-moth --name "My moth" --stage pupa --source "Smith 2019, Table 2"',
    );
  },
  async run(invocation, words, options) {
    const wishes = wishesIn(options);
    const input = await inputOf(invocation, words, options);
    if (typeof options.save === 'string') {
      if (options.lots === true && words.length === 0)
        throw new Refusal(
          'lots of unlike animals make no profile',
          '--lots',
          'Name the lots, or their profile.',
        );
      return save(invocation, input, wishes, options);
    }
    if (input.lots !== undefined && (words.length === 0 || !fitsSomething(input))) {
      const {lots} = input;
      invocation.answer({lots: lots.durations, passedOver: lots.passedOver}, () =>
        lotsText(lots, invocation.columns),
      );
      return true;
    }
    const stage = onlyStage(input, textOption(options, 'stage'));
    const {rows} = stage;
    const draw = {columns: invocation.columns, glyphs: glyphsFor(process.env), input};
    if (options.compare === true) {
      const answers = compared(rows, wishes, input.where);
      invocation.answer(answers, () =>
        comparedText(answers, bestModel(rows, wishes, input.where), rows, draw),
      );
      return true;
    }
    const kind = curveKinds.find(each => each === options.model);
    if (kind !== undefined) {
      const answer = curveFit(kind, rows, wishes, input.where);
      invocation.answer(answer, () => curveText(answer, rows, draw));
      return true;
    }
    if (options.model === 'table') throw new InvalidArgumentError('--model table goes with --save.');
    const answer = lineFit(rows, wishes, input.where);
    invocation.answer(answer, () => lineText(answer, rows, draw));
    return true;
  },
};

async function inputOf(
  invocation: Invocation,
  words: readonly string[],
  options: Options,
): Promise<FitInput> {
  const stage = textOption(options, 'stage');
  if (options.lots === true) return inputOfLots(invocation, words, stage);
  if (words.length === 0)
    throw new InvalidArgumentError('name a table, or type days as 15=55.6 20=31, or give --lots.');
  if (words.every(word => word.includes('='))) return inputTyped(words, stage);
  if (words.length > 1)
    throw new Refusal(
      `${words.length} files are more than one`,
      words.join(', '),
      'Give one table; typed days are written 15=55.6.',
    );
  const [file = ''] = words;
  return inputOfTable(daysTable(textIn(file), file), file, stage);
}

/** Lots of several stages, or at one temperature, are told but not fitted. */
function fitsSomething({stages: [first, ...more]}: FitInput): boolean {
  const temperatures = new Set(first?.rows.map(({temperature}) => temperature.toFixed(1)));
  return more.length === 0 && temperatures.size > 1;
}

/** What a single fit is made of: one stage's rows. */
function onlyStage({stages, where}: FitInput, asked: string | undefined) {
  const [first] = stages;
  if (first !== undefined && stages.length === 1) return first;
  throw new Refusal(
    `the table holds several stages${asked === undefined ? '' : `, but no ${asked}`}: ${stages.map(({stage}) => stage).join(', ')}`,
    where,
    'Name one with --stage; --save keeps all of them.',
  );
}

async function save(
  invocation: Invocation,
  input: FitInput,
  wishes: FitWishes,
  options: Options,
): Promise<boolean> {
  const saved = await fitSaved(invocation, input, wishes, {
    profile: String(options.save),
    kind: savedKinds.find(each => each === options.model),
    source: textOption(options, 'source'),
    locator: textOption(options, 'locator'),
    name: textOption(options, 'name'),
    rank: options.rank === 'genus' ? 'genus' : 'species',
    cv: typeof options.cv === 'number' ? options.cv : undefined,
    sure: options.sure === true,
  });
  invocation.answer(saved, () => savedText(saved));
  return true;
}

function wishesIn(options: Options): FitWishes {
  const number = (name: string) => (typeof options[name] === 'number' ? options[name] : undefined);
  return {
    method: options.method === 'rma' ? 'rma' : 'linear',
    weighted: options.weighted === true,
    fromC: number('fromC'),
    toC: number('toC'),
  };
}
