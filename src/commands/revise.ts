import {recordCommand} from './recording.ts';
import {candidateWords, collect} from './words.ts';

export const command = recordCommand({
  arguments: [['<lot>', 'the lot']],
  options: command =>
    command
      .option('--taxon <text>', 'its name as known now')
      .option('--after <specimen>', 'named as this specimen of it is')
      .option('--candidate <profile=weight>', 'what it may be now; may be given several times', collect)
      .option('--why <text>'),
  examples: [
    'revise 26-031-A --after 26-031-A-1',
    'revise 26-025-A --taxon Noctuidae --candidate noctuidae=0.9 --candidate lepidoptera=0.1',
  ],
  record: ([lot], {taxon, after, candidate, why}) => ({
    record: 'revision',
    lot,
    taxon,
    specimen: after,
    candidates: Array.isArray(candidate) ? candidateWords(candidate) : undefined,
    why,
  }),
});
