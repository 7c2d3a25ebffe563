import {isApplied} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {openDesk} from '../work/desk.ts';
import {STRANGERS, strangerRecords} from '../work/not-its-own.ts';
import {record} from '../work/record.ts';
import type {Command} from './command.ts';
import {answerWritten, given, recordCommand} from './recording.ts';

const fields = (
  [specimen, taxon]: readonly string[],
  {qualifier, rank, det, on, note}: Readonly<Record<string, unknown>>,
) => ({record: 'identification', specimen, taxon, qualifier, rank, by: det, on, note});

const plain = recordCommand({
  arguments: [
    ['<specimen>', 'the specimen'],
    ['<taxon>', 'its name'],
  ],
  options: command =>
    command
      .option('--qualifier <word>', 'the doubt about it: cf., aff. or ?')
      .option('--rank <word>', 'species, genus, family …')
      .option('--det <name>', 'who identified it (default: who records it)')
      .option('--on <day>', 'the day of the identification')
      .option('--parasitoid', 'it was entered as an adult of the lot, and came out of one of its animals')
      .option('--scavenger', 'it was entered as an adult of the lot, and fed on what was dead there')
      .option('--note <text>'),
  examples: [
    'identify 26-031-A-1 "Pieris rapae" --rank species --det "B. Namer"',
    'identify 26-020-A-1 "Baetis rhodani" --qualifier cf.',
    'identify 26-031-A-4 Tachinidae --parasitoid',
  ],
  record: fields,
});

export const command: Command = {
  declare: plain.declare,
  async run(invocation, args, options) {
    const [as, another] = STRANGERS.filter(word => options[word] === true);
    if (as === undefined) return plain.run(invocation, args, options);
    if (another !== undefined)
      throw new Refusal(`it is a ${as} or a ${another}, not both`, 'identify', 'Leave one of them out.');
    const [specimen = '', taxon = ''] = args;
    const {state, civil} = await openDesk(invocation, 'all');
    const {at, key, sure} = options;
    const named = given({...fields(args, options), at, key, sure});
    const instead = isApplied(key, state.entries) ? [] : strangerRecords(specimen, as, taxon, state, civil);
    const drafts = [...instead, named];
    return answerWritten(invocation, await record(invocation, drafts));
  },
};
