import {Option} from 'commander';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {accountedFor, WHEREABOUTS} from '../work/not-accounted.ts';
import {record} from '../work/record.ts';
import {type Command, type Options, textOption} from './command.ts';
import {answerWritten, recordCommand} from './recording.ts';
import {stageWords} from './words.ts';

const plain = recordCommand({
  animal: true,
  arguments: [
    ['<lot>', 'the lot'],
    ['<stage=n...>', 'animals seen by stage'],
  ],
  options: command =>
    command
      .option('--complete', 'all animals were looked at (default: when the total is the number alive)')
      .option('--part', 'only a part was looked at')
      .addOption(
        new Option('--others <word>', 'all were looked at, and what became of those not seen').choices(
          WHEREABOUTS,
        ),
      )
      .option('--why <text>', 'with --others: how that is known'),
  examples: [
    'count 26-031-A larva-5=15 pupa=8',
    'count 26-031-A larva-5=13 pupa=8 --others cannibalised --why "two heads left"',
  ],
  record: ([lot, ...counts], {complete, part}) => ({
    record: 'count',
    lot,
    stages: stageWords(counts),
    complete: complete === true ? true : part === true ? false : undefined,
  }),
});

export const command: Command = {
  declare: plain.declare,
  async run(invocation, args, options) {
    const others = WHEREABOUTS.find(word => word === options.others);
    if (others === undefined) return plain.run(invocation, args, options);
    refuseOfOneOrPart(options);
    const [lot = '', ...counts] = args;
    const counted = {lot, stages: stageWords(counts), at: textOption(options, 'at')};
    const {state} = await openDesk(invocation);
    const drafts = accountedFor(counted, others, textOption(options, 'why'), state);
    const key = textOption(options, 'key');
    const sure = options.sure === true ? {sure: true} : {};
    const keyed = drafts.map(draft => ({...draft, ...sure, ...(key === undefined ? {} : keyOf(draft, key))}));
    return answerWritten(invocation, await record(invocation, keyed));
  },
};

/** What became of the others is known only where all were looked at. */
function refuseOfOneOrPart(options: Options): void {
  if (textOption(options, 'animal') !== undefined)
    throw new Refusal(
      '--others tells of all that were not seen, and --animal of one',
      'count',
      'Leave one of them out; what became of one animal is teneral loss LOT 1 --cause … --animal NUMBER.',
    );
  if (options.part === true)
    throw new Refusal(
      '--others says that all were looked at, and --part that only some were',
      'count',
      'Leave one of them out.',
    );
}

/** The count has the key as given; what is written down with it, one of its own, so that both are applied once. */
function keyOf(draft: object, key: string): {readonly key: string} {
  return {key: 'record' in draft && draft.record === 'count' ? key : `${key}/others`};
}
