import {Refusal} from '../records/refusal.ts';
import {declareNeeds, needsGiven} from './needs-options.ts';
import {recordCommand} from './recording.ts';
import {candidateWords, collect} from './words.ts';

export const command = recordCommand({
  arguments: [['<lot>', 'the lot']],
  options: command =>
    declareNeeds(
      command
        .option('--taxon <text>', 'its name as known now')
        .option('--after <specimen>', 'named as this specimen of it is')
        .option('--candidate <profile=weight>', 'what it may be now; may be given several times', collect)
        .option('--needs-as-profile', 'they need what their profile says again')
        .option('--why <text>'),
    ),
  examples: [
    'revise 26-031-A --after 26-031-A-1',
    'revise 26-041-A --warmest 12 --litres-each 0.5 --why "they gape at 14"',
    'revise 26-025-A --taxon Noctuidae --candidate noctuidae=0.9 --candidate lepidoptera=0.1',
  ],
  record: ([lot], {taxon, after, candidate, why, needsAsProfile, ...rest}) => ({
    record: 'revision',
    lot,
    taxon,
    specimen: after,
    candidates: Array.isArray(candidate) ? candidateWords(candidate) : undefined,
    needs: needsSaid(needsAsProfile === true, needsGiven(rest)),
    why,
  }),
});

function needsSaid(asProfile: boolean, given: ReturnType<typeof needsGiven>): typeof given | null {
  if (!asProfile) return given;
  if (given === undefined) return null;
  throw new Refusal(
    'they need what their profile says, or what is said here',
    '--needs-as-profile',
    'Leave one of them out.',
  );
}
