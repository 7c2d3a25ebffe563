import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [['<name>', 'who works here']],
  options: command =>
    command
      .option('--day <weekday>', 'mon, tue …; may be given several times', collect)
      .option('--place <text>', 'a place this person may do; may be given several times', collect)
      .option('--minutes <n>', 'minutes a day that this person has for care', numberWord),
  examples: ['person "A. Keeper" --day mon --day thu --place "rack A"'],
  record: ([name], {day, place, minutes}) => ({record: 'person', name, days: day, places: place, minutes}),
});
