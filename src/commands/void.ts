import {recordCommand} from './recording.ts';

export const command = recordCommand({
  dated: false,
  arguments: [['<entry>', 'the id of the wrong entry, as teneral daybook shows it']],
  options: command => command.option('--reason <text>', 'what was wrong with it'),
  examples: ['void e118 --reason "counted the wrong cage"'],
  record: ([entry], {reason}) => ({record: 'void', entry, reason}),
});
