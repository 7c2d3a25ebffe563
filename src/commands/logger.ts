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
      .option('--max-gap <hours>', 'a longer pause is a gap (default: 3, by hand 26)', numberWord),
  examples: ['logger L1 automatic --name "rack A, top shelf"'],
  record: ([code, kind], {name, maxGap}) => ({record: 'logger', code, kind, name, maxGapHours: maxGap}),
});
