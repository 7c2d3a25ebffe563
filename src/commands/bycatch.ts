import {recordCommand} from './recording.ts';
import {numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<sample>', 'the field sample'],
    ['<what>', 'what was in it'],
  ],
  options: command =>
    command
      .requiredOption('--done <text>', 'what was done with it: "released at once under the hedge"')
      .option('--kind <word>', 'reptile, amphibian, small-mammal, bird, fish, arthropod or other')
      .option('--count <n>', 'how many', numberWord)
      .option('--dead', 'it was dead')
      .option('--alive', 'it was alive'),
  examples: ['bycatch 26-015 "common lizard" --kind reptile --alive --done "released at once, 5 m off"'],
  record: ([sample, what], {done, kind, count, dead, alive}) => ({
    record: 'bycatch',
    sample,
    what,
    kind,
    count,
    alive: dead === true ? false : alive,
    done,
  }),
});
