import type {Options} from './command.ts';
import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [['<lot>', 'the lot they came out of']],
  options: command =>
    command
      .option('--female <n>', 'females', numberWord)
      .option('--male <n>', 'males', numberWord)
      .option('--unsexed <n>', 'adults whose sex was not looked at', numberWord)
      .option('--since <instant>', 'last look at which they were not out (default: the last look)')
      .option('--fate <word>', 'kept, killed, released or dead')
      .option('--condition <text>', 'deformed, battered, drowned …')
      .option('--subimago', 'a mayfly’s first winged form')
      .option('--exuviae <code>', 'the vial with the cast skin')
      .option(
        '--association <n>',
        '1 same animal, 2 same container and day, 3 same lot, 4 assumed',
        numberWord,
      )
      .option(
        '--code <specimen>',
        'a specimen code; may be given several times (default: LOT-1, LOT-2 …)',
        collect,
      ),
  examples: ['emerge 26-031-A --female 2 --male 1', 'emerge 26-044-A --unsexed 3 --fate released'],
  record: ([lot], options) => ({
    record: 'emergence',
    lot,
    since: options.since,
    adults: adults(options),
    fate: options.fate,
    condition: options.condition,
    as: options.subimago === true ? 'subimago' : undefined,
    exuviae: options.exuviae === undefined ? undefined : exuviae(options),
    codes: options.code,
  }),
});

function adults({female, male, unsexed}: Options): {sex: string; count: unknown}[] {
  const bySex = {female, male, unknown: unsexed};
  const named = Object.entries(bySex).flatMap(([sex, count]) => (count === undefined ? [] : [{sex, count}]));
  return named.length === 0 ? [{sex: 'unknown', count: 1}] : named;
}

function exuviae({exuviae: code, association}: Options): unknown {
  return association === undefined ? {code} : {code, association};
}
