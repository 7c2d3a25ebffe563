import {recordCommand} from './recording.ts';

export const command = recordCommand({
  arguments: [['<lot>', 'the lot that is finished']],
  options: command => command.option('--reason <text>', 'required while animals may be alive in it'),
  examples: ['close 26-022-B', 'close 26-018-A --reason "second winter over, all galls opened"'],
  record: ([lot], {reason}) => ({record: 'close', lot, reason}),
});
