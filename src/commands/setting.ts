import {textOption} from './command.ts';
import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [],
  options: command =>
    command
      .option(
        '--finished-lots <used|left-out>',
        'whether forecasts begin from the pace and survival of finished lots, or as published',
      )
      .option('--midsummer <mm-dd>', 'the day of midsummer where the animals come from: 06-21 in the north'),
  examples: ['setting --finished-lots left-out', 'setting --midsummer 12-21'],
  record: (_, options) => ({
    record: 'setting',
    finishedLots: textOption(options, 'finishedLots'),
    midsummer: textOption(options, 'midsummer'),
  }),
});
