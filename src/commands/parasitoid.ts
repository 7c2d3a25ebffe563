import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  animal: true,
  arguments: [
    ['<lot>', 'the lot of the hosts'],
    ['[count]', 'parasitoids that came out (default: 1)'],
  ],
  options: command =>
    command
      .option('--taxon <text>', 'what they are, as known now')
      .option('--hosts <n>', 'hosts that died of them', numberWord, 1)
      .option('--host-stage <stage>', 'the stage of the hosts')
      .option('--sex <word>', 'of all of them: female, male or unknown')
      .option('--hyper', 'they came out of parasitoids of the hosts')
      .option('--out-of <text>', 'the primary parasitoid, by name or specimen code')
      .option('--remains <code>', 'the vial with the remains of the host')
      .option('--cocoon <code>', 'the vial with their cocoon')
      .option('--together', 'the whole brood in one vial, under one code')
      .option('--since <instant>', 'last look at which they were not out')
      .option(
        '--code <specimen>',
        'a specimen code; may be given several times (default: LOT-p1 …)',
        collect,
      ),
  examples: [
    'parasitoid 26-031-A 31 --taxon Braconidae --hosts 1 --host-stage larva-5 --together',
    'parasitoid 26-031-A 2 --taxon Ichneumonidae --hyper --out-of Braconidae --hosts 0',
  ],
  record: (
    [lot, count = '1'],
    {taxon, hosts, hostStage, sex, hyper, outOf, remains, cocoon, together, since, code},
  ) => ({
    record: 'parasitoid',
    lot,
    count: numberWord(count),
    taxon,
    hosts,
    hostStage,
    sex,
    hyper,
    outOf,
    remains: remains === undefined ? undefined : {code: remains, what: 'host-remains'},
    cocoon: cocoon === undefined ? undefined : {code: cocoon, what: 'cocoon'},
    together,
    since,
    codes: code,
  }),
});
