import {recordCommand} from './recording.ts';
import {collect, numberWord} from './words.ts';

export const command = recordCommand({
  arguments: [
    ['<lot>', 'the lot of the hosts'],
    ['[count]', 'parasitoids that came out (default: 1)'],
  ],
  options: command =>
    command
      .option('--taxon <text>', 'what they are, as known now')
      .option('--hosts <n>', 'hosts that died of them', numberWord, 1)
      .option('--host-stage <stage>', 'the stage of the hosts')
      .option('--since <instant>', 'last look at which they were not out')
      .option(
        '--code <specimen>',
        'a specimen code; may be given several times (default: LOT-p1 …)',
        collect,
      ),
  examples: ['parasitoid 26-031-A 31 --taxon Braconidae --hosts 1 --host-stage larva-5'],
  record: ([lot, count = '1'], {taxon, hosts, hostStage, since, code}) => ({
    record: 'parasitoid',
    lot,
    count: numberWord(count),
    taxon,
    hosts,
    hostStage,
    since,
    codes: code,
  }),
});
