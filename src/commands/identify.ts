import {recordCommand} from './recording.ts';

export const command = recordCommand({
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
      .option('--note <text>'),
  examples: [
    'identify 26-031-A-1 "Pieris rapae" --rank species --det "B. Namer"',
    'identify 26-020-A-1 "Baetis rhodani" --qualifier cf.',
  ],
  record: ([specimen, taxon], {qualifier, rank, det, on, note}) => ({
    record: 'identification',
    specimen,
    taxon,
    qualifier,
    rank,
    by: det,
    on,
    note,
  }),
});
