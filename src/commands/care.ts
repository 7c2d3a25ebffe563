import {InvalidArgumentError} from 'commander';
import type {Options} from './command.ts';
import {recordCommand} from './recording.ts';
import {answerWord, collect} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<unit>', 'the unit it was done in'],
    ['<task>', 'feed, clean, change-water …'],
  ],
  options: command =>
    command
      .option('--lot <code>', 'the lot it was done for (default: all that live in the unit)')
      .option('--seen <key=value>', 'what was seen; may be given several times', collect),
  examples: ['care C3 clean --seen mould=no --seen dead=0'],
  record: ([unit, task], {lot, seen}) => ({record: 'care', unit, lot, task, seen: answers(seen)}),
});

function answers(seen: Options[string]): Record<string, unknown> | undefined {
  if (!Array.isArray(seen)) return undefined;
  const pairs = seen.map(String).map(pair => {
    const [, key, value] = /^([^=]+)=(.+)$/.exec(pair) ?? [];
    if (key === undefined || value === undefined)
      throw new InvalidArgumentError(`"${pair}" is not written key=value.`);
    return [key, answerWord(value)];
  });
  return Object.fromEntries(pairs);
}
