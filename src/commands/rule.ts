import {type Options, textOption} from './command.ts';
import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<code>', 'the rule’s code; that of a start value replaces it'],
    ['<task>', 'feed, clean, change-water …'],
  ],
  options: command =>
    command
      .option('--every <days>', 'how often', numberWord)
      .option('--every-degree-days <n>', 'how often, in warmth', numberWord)
      .option('--lower <C>', 'the threshold of that warmth', numberWord, 10)
      .option('--earliest <days>', 'sooner is too soon', numberWord)
      .option('--latest <days>', 'later is too late', numberWord)
      .option('--type <word>', 'for all units of a type')
      .option('--unit <code>', 'for one unit')
      .option('--group <code>', 'for a group of animals')
      .option('--profile <code>', 'for a profile')
      .option('--lot <code>', 'for one lot')
      .option('--stage <stage>', 'for this stage; may be given several times', collect)
      .option('--harm <word>', 'what a miss does: high, medium or low')
      .option('--observe <key>', 'must be answered when done; may be given several times', collect)
      .option('--minutes <n>', 'how long it takes', numberWord)
      .option('--caution <text>')
      .option('--source <text>', 'where the figures come from')
      .option('--off', 'switch the rule off'),
  examples: [
    'rule feed-sallow feed --every 1 --latest 1.5 --lot 26-031-A',
    'rule cage-clean clean --every 7 --type cage --off',
  ],
  record: ([code, task], options) => {
    const {type, unit, group, profile, lot, stage, harm, observe, minutes, caution, source, off} = options;
    return {
      record: 'rule',
      code,
      task,
      for: {type, unit, group, profile, lot, stages: stage},
      every: every(options),
      earliestDays: options.earliest,
      latestDays: options.latest,
      harm,
      observe,
      minutes,
      caution: textOption({caution}, 'caution'),
      source,
      off,
    };
  },
});

function every(options: Options): unknown {
  const {every: days, everyDegreeDays, lower} = options;
  if (everyDegreeDays !== undefined) return {degreeDays: everyDegreeDays, lower};
  return days === undefined ? undefined : {days};
}
