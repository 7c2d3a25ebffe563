import {type Imported, importFiles} from '../work/import.ts';
import {type Command, examples, textOption} from './command.ts';

const REJECTED_SHOWN = 10;

export const command: Command = {
  declare(command) {
    command
      .argument('<logger>', 'the logger whose readings these are')
      .argument('<file...>', 'files as it exports them: comma, semicolon or tab')
      .option('--dry-run', 'say how the files are understood; import nothing')
      .option('--zone <IANA>', 'zone of instants without an offset (default: the room’s)')
      .option('--columns <text>', 'which column is what: time=1,temperature=2,humidity=3')
      .option('--format <text>', 'how dates are written: dmy, mdy, ymd, or a luxon format');
    examples(
      command,
      'import L1 logger.csv',
      'import L1 export.txt --dry-run --columns date=1,time=2,temperature=4 --format dmy',
    );
  },
  async run(invocation, [logger = '', ...files], options) {
    const dryRun = options.dryRun === true;
    const answer = await importFiles(invocation, logger, files, {
      dryRun,
      zone: textOption(options, 'zone'),
      columns: textOption(options, 'columns'),
      format: textOption(options, 'format'),
    });
    invocation.answer(answer, () => answer.map(each => told(each, dryRun)).join('\n\n'));
  },
};

function told(
  {file, rows, added, duplicates, rejected, from, to, understood}: Imported,
  dryRun: boolean,
): string {
  const verb = dryRun ? 'would be added' : 'added';
  const lines = [
    `${file}: ${rows} rows, ${added} ${verb}, ${duplicates} known already, ${rejected.length} rejected`,
    `  read as  ${understood}`,
  ];
  if (from !== null && to !== null) lines.push(`  from     ${from}  to  ${to}`);
  const shown = rejected.slice(0, REJECTED_SHOWN).map(({row, what}) => `  row ${row}: ${what}`);
  const more = rejected.length > shown.length ? [`  and ${rejected.length - shown.length} more`] : [];
  return [...lines, ...shown, ...more].join('\n');
}
