import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [
    ['<logger>', 'the logger'],
    ['<from>', 'an instant'],
    ['<to>', 'an instant'],
  ],
  options: command =>
    command
      .requiredOption('--why <text>', 'why these readings are not to be trusted')
      .option('--lift', 'they are to be trusted again'),
  examples: ['mask L1 2026-06-10T09:00 2026-06-10T11:30 --why "lay on the bench"'],
  record: ([logger, from, to], {why, lift}) => ({record: 'mask', logger, from, to, why, lift}),
});
