// The options that describe a care rule, shared by the commands that write and that try one.
import {type Command as Commander, InvalidArgumentError} from 'commander';
import {HOW_MUCH, readHowMuch} from '../exchange/how-much.ts';
import type {RuleChange} from '../work/rules.ts';
import {type Options, textOption} from './command.ts';
import {collect, numberWord} from './words.ts';

export function ruleOptions(command: Commander): Commander {
  return command
    .option('--every <days>', 'how often', numberWord)
    .option('--every-degree-days <n>', 'how often, in warmth', numberWord)
    .option('--lower <C>', 'the threshold of that warmth', numberWord, 10)
    .option('--earliest <days>', 'sooner is too soon', numberWord)
    .option('--latest <days>', 'later is too late', numberWord)
    .option(
      '--amount <words>',
      'how much: "1 prey each", "0.2 mg food each a day", "25 %" of the water, none',
    )
    .option('--type <word>', 'for all units of a type')
    .option('--unit <code>', 'for one unit')
    .option('--group <code>', 'for a group of animals')
    .option('--profile <code>', 'for a profile')
    .option('--lot <code>', 'for one lot')
    .option('--stage <stage>', 'for this stage; may be given several times', collect)
    .option('--harm <word>', 'what a miss does: high, medium or low')
    .option('--observe <key>', 'must be answered when done; may be given several times', collect)
    .option('--minutes <n>', 'how long it takes', numberWord)
    .option('--caution <text>', 'shown where the task is done')
    .option('--source <text>', 'where the figures come from');
}

/** What was given; the record's schema looks at the values. */
export function ruleChange(task: string | undefined, options: Options): RuleChange {
  const {type, unit, group, profile, lot, stage, earliest, latest, harm, observe, minutes, caution, source} =
    options;
  const whom = Object.fromEntries(
    Object.entries({type, unit, group, profile, lot, stages: stage}).filter(
      ([, value]) => value !== undefined,
    ),
  );
  return {
    task,
    for: Object.keys(whom).length === 0 ? undefined : whom,
    every: every(options),
    earliestDays: earliest,
    latestDays: latest,
    amount: amount(textOption(options, 'amount')),
    harm,
    observe,
    minutes,
    caution,
    source,
  } as RuleChange;
}

function amount(words: string | undefined): RuleChange['amount'] {
  if (words === undefined) return undefined;
  const read = readHowMuch(words);
  if (read === undefined) throw new InvalidArgumentError(`"${words}" is no amount. ${HOW_MUCH}.`);
  return read;
}

function every({every: days, everyDegreeDays, lower}: Options): unknown {
  if (everyDegreeDays !== undefined) return {degreeDays: everyDegreeDays, lower};
  return days === undefined ? undefined : {days};
}
