import type {Options} from './command.ts';
import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
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
      .option(
        '--adult <sex=n:fate:condition>',
        'some that differ from the others, such as male=1:dead:"wings battered"; may be given several times',
        collect,
      )
      .option('--exuviae <code>', 'the vial with the cast skin or puparium')
      .option('--kept <word>', 'what is in that vial: exuviae, puparium, cocoon, gall, mine, other')
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
  examples: [
    'emerge 26-031-A --female 2 --male 1',
    'emerge 26-031-A --female 4 --adult male=1:dead:drowned',
    'emerge 26-044-A --unsexed 3 --fate released',
    'emerge 26-019-A --male 1 --animal 02 --exuviae 26-019-A-x2 --association 1',
  ],
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

function adults({female, male, unsexed, adult}: Options): object[] {
  const bySex = {female, male, unknown: unsexed};
  const alike = Object.entries(bySex).flatMap(([sex, count]) => (count === undefined ? [] : [{sex, count}]));
  const others = Array.isArray(adult) ? adult.map(adultsWord) : [];
  const named = [...alike, ...others];
  return named.length === 0 ? [{sex: 'unknown', count: 1}] : named;
}

/** "male=1:dead:wings battered": sex and number, then their fate, then their condition. */
function adultsWord(word: string): object {
  const [who = '', fate = '', ...rest] = word.split(':');
  const [sex = '', count = '1'] = who.split('=');
  const condition = rest.join(':');
  return {
    sex,
    count: numberWord(count),
    ...(fate === '' ? {} : {fate}),
    ...(condition === '' ? {} : {condition}),
  };
}

function exuviae({exuviae: code, association, kept: what}: Options): unknown {
  return {
    code,
    ...(association === undefined ? {} : {association}),
    ...(what === undefined ? {} : {what}),
  };
}
