import {extname} from 'node:path';
import {text as textOf} from 'node:stream/consumers';
import {Option} from 'commander';
import {readRecords} from '../exchange/records-file.ts';
import type {MappingLine} from '../exchange/tables/mapping.ts';
import {rowKinds} from '../exchange/tables/table-records.ts';
import {textIn} from '../exchange/text-file.ts';
import {Refusal} from '../records/refusal.ts';
import {warnOfPlaces} from '../work/hints.ts';
import {type Applied, record, rehearse} from '../work/record.ts';
import {type TakenIn, takeIn} from '../work/take-in.ts';
import {type Command, examples, type Invocation, listOption, type Options, textOption} from './command.ts';
import {collect} from './words.ts';

export const command: Command = {
  declare(command) {
    command
      .argument(
        '<file>',
        'a JSON array of records, or one JSON object a line; - reads standard input; or a spreadsheet’s .csv',
      )
      .option('--dry-run', 'check everything and write nothing')
      .option('--sure', 'write them down although some are unusual')
      .addOption(new Option('--as <what>', 'of a .csv: what a row stands for').choices([...rowKinds]))
      .option(
        '--column <field = heading>',
        'of a .csv: which column gives a field; may be given several times (default: headings called like a field)',
        collect,
      )
      .option('--mapping <file>', 'of a .csv: a file with such a line for each field');
    examples(
      command,
      'apply season.json',
      'apply - < records.jsonl',
      'apply catch.csv --as sample --dry-run',
      'apply catch.csv --as sample --column "code = Trap no" --column "collectedFrom = Set | d.m.y" --column "method := pitfall"',
      'apply adults.csv --as specimen --column "sex = Sex | f > female | m > male"',
    );
    command.addHelpText('after', FIELDS);
  },
  async run(invocation, [file = '-'], options) {
    await (extname(file).toLowerCase() === '.csv' ? table : records)(invocation, file, options);
  },
};

const FIELDS = `
Fields are the headings of the tables that teneral export csv writes. After a heading may follow, parted by |
  d.m.y            how days are written (m/d/y, y-m-d); day and month are never guessed
  word > other     a word that stands for another
  split MARK       several in one cell
`;

async function records(invocation: Invocation, file: string, options: Options): Promise<void> {
  const name = file === '-' ? 'standard input' : file;
  const placed = readRecords(file === '-' ? await textOf(process.stdin) : textIn(file), name);
  const drafts = placed.map(({value}) =>
    options.sure === true && isObject(value) ? {...value, sure: true} : value,
  );
  const where = (index: number) => placed[index]!.where;
  const applied = await (options.dryRun === true
    ? rehearse(invocation, drafts, where)
    : record(invocation, drafts, where).then(done => warnOfPlaces(invocation, done)));
  invocation.answer(applied, () => told(applied, options.dryRun === true));
}

async function table(invocation: Invocation, file: string, options: Options): Promise<void> {
  const as = rowKinds.find(kind => kind === options.as);
  if (as === undefined)
    throw new Refusal(
      'nobody said what a row stands for',
      file,
      `Say --as ${rowKinds.join(', --as ')}; --dry-run shows what would be taken in.`,
    );
  const dryRun = options.dryRun === true;
  const taken = await takeIn(invocation, file, {
    as,
    mapping: mapping(options),
    dryRun,
    sure: options.sure === true,
  });
  invocation.answer(taken, () => [tableTold(taken), `  ${told(taken, dryRun)}`].join('\n'));
}

/** The lines of the file, then those of the command line. */
function mapping(options: Options): MappingLine[] {
  const file = textOption(options, 'mapping');
  const lines = file === undefined ? [] : textIn(file).split(/\r?\n/);
  return [
    ...lines.map((text, i) => ({text, where: `${file}, line ${i + 1}`})),
    ...listOption(options, 'column').map(text => ({text, where: '--column'})),
  ];
}

function tableTold({file, rows, columns, unused}: TakenIn): string {
  const read = columns.map(({field, column}) => {
    if (column === null) return `${field} for all`;
    return column === field ? field : `${field} from "${column}"`;
  });
  return [
    `${file}: ${rows} rows`,
    `  read as   ${read.join(', ')}`,
    ...(unused.length === 0 ? [] : [`  not used  ${unused.map(name => `"${name}"`).join(', ')}`]),
  ].join('\n');
}

function told({applied, passedOver}: Applied, dryRun: boolean): string {
  const done = dryRun ? 'records would be applied; nothing was written' : 'records applied';
  return passedOver === 0
    ? `${applied} ${done}`
    : `${applied} ${done}, ${passedOver} passed over (applied before)`;
}

function isObject(value: unknown): value is object {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
