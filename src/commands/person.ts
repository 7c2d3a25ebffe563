import {recordCommand} from './recording.ts';
import {collect} from './words.ts';

export const command = recordCommand({
  arguments: [['<name>', 'who works here']],
  options: command =>
    command
      .option('--day <weekday>', 'mon, tue …; may be given several times', collect)
      .option('--place <text>', 'a place this person may do; may be given several times', collect),
  examples: ['person "A. Keeper" --day mon --day thu --place "rack A"'],
  record: ([name], {day, place}) => ({record: 'person', name, days: day, places: place}),
});
