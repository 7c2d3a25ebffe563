import {refuseWithoutReset} from '../work/extremes.ts';
import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  dated: false,
  arguments: [
    ['<logger>', 'the minimum–maximum thermometer'],
    ['<minimum>', '°C'],
    ['<maximum>', '°C'],
  ],
  options: command =>
    command
      .requiredOption('--from <instant>', 'when it was last reset')
      .option('--to <instant>', 'when it was read (default: now)')
      .option('--shows <C>', 'what it shows at this moment', numberWord)
      .option('--reset', 'it was reset after reading')
      .option('--not-reset', 'it was not reset'),
  examples: ['extremes M1 17.2 24.8 --from 2026-06-11T08:30 --shows 20.5 --reset'],
  asks: refuseWithoutReset,
  record: ([logger, minimum, maximum], {from, to, shows, reset, notReset}, now) => ({
    record: 'extremes',
    logger,
    minimum: numberWord(minimum ?? ''),
    maximum: numberWord(maximum ?? ''),
    from,
    to: to ?? now,
    now: shows,
    reset: reset === true ? true : notReset === true ? false : undefined,
  }),
});
