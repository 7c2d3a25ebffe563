import {InvalidArgumentError} from 'commander';
import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<code>', 'the logger’s code'],
    ['[kind]', 'automatic, extremes (a minimum–maximum thermometer) or hand; needed for a new one'],
  ],
  options: command =>
    command
      .option('--name <text>', 'what people call it')
      .option(
        '--max-fill <days>',
        'how far from its readings the days around fill a gap (default: 7)',
        numberWord,
      )
      .option('--max-gap <hours>', 'a longer pause is a gap (default: 3, by hand 26)', numberWord)
      .option(
        '--rule <name=number>',
        'when its readings are doubted, or off; readings --doubts lists the rules',
        ruleWord,
      ),
  examples: ['logger L1 automatic --name "rack A, top shelf"', 'logger L1 --rule spike=3 --rule stuck=off'],
  record: ([code, kind], {name, maxGap, maxFill, rule}) => ({
    record: 'logger',
    code,
    kind,
    name,
    maxGapHours: maxGap,
    maxFillDays: maxFill,
    rules: rule,
  }),
});

/** "spike=3", "stuck=off", gathered over several. */
function ruleWord(word: string, earlier: Readonly<Record<string, number | 'off'>> = {}) {
  const [name = '', limit = '', ...rest] = word.split('=');
  if (name === '' || limit === '' || rest.length > 0)
    throw new InvalidArgumentError(`"${word}" is not written rule=number or rule=off.`);
  return {...earlier, [name]: limit === 'off' ? ('off' as const) : numberWord(limit)};
}
