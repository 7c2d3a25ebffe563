// A million rows of a logger file into a room, as a person does it: time and memory of the whole program, against a
// script that splits lines, parses dates, puts rows in order and writes them as JSON.
import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {loggerText} from './readings.ts';

const ROUNDS = 3;
/** Prints the most memory a process ever held, in kilobytes, as it ends. */
const TELL_MEMORY =
  'data:text/javascript,process.on("exit",()=>process.stderr.write("\\nRSS "+process.resourceUsage().maxRSS))';
const PLAIN_SCRIPT = `
  const {readFileSync, writeFileSync} = require('node:fs');
  const rows = readFileSync(process.argv[1], 'utf8')
    .split('\\n')
    .slice(1)
    .filter(line => line !== '')
    .map(line => line.split(','))
    .map(([time, temperature, humidity]) => ({at: new Date(time + 'Z'), temperature: Number(temperature), humidity: Number(humidity)}));
  rows.sort((a, b) => a.at - b.at);
  writeFileSync(process.argv[2], JSON.stringify(rows));
`;

export function benchImport(): string {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-bench-'));
  try {
    const path = join(folder, 'logger.csv');
    writeFileSync(path, loggerText());
    const program = new URL('../../dist/main.mjs', import.meta.url).pathname;
    const best = {
      ours: Number.POSITIVE_INFINITY,
      again: Number.POSITIVE_INFINITY,
      plain: Number.POSITIVE_INFINITY,
    };
    const most = {ours: 0, again: 0, plain: 0};
    const take = (name: keyof typeof best, args: readonly string[]) => {
      const {ms, megabytes} = measured(args);
      best[name] = Math.min(best[name], ms);
      most[name] = Math.max(most[name], megabytes);
    };
    for (let round = 0; round < ROUNDS; round++) {
      const room = join(folder, `room-${round}`);
      const teneral = (...words: string[]) => [program, '--room', room, ...words];
      measured([program, 'init', room, '--name', 'bench', '--zone', 'UTC']);
      measured(teneral('logger', 'L1', 'automatic'));
      take('ours', teneral('import', 'L1', path));
      take('again', teneral('import', 'L1', path));
      take('plain', ['-e', PLAIN_SCRIPT, path, join(folder, 'plain.json')]);
    }
    const line = (what: string, name: keyof typeof best) =>
      `  ${what} ${best[name].toFixed(0)} ms, ${most[name].toFixed(0)} MB`;
    return [
      'a million rows imported into a room, the whole program',
      line('teneral import', 'ours'),
      line('the same file again', 'again'),
      line('a script that splits lines and writes JSON', 'plain'),
      `  ${(best.plain / best.ours).toFixed(1)} times as fast; ${(most.plain / most.ours).toFixed(1)} times less memory`,
    ].join('\n');
  } finally {
    rmSync(folder, {recursive: true});
  }
}

function measured(args: readonly string[]): {readonly ms: number; readonly megabytes: number} {
  const begun = performance.now();
  const {status, stderr} = spawnSync(process.execPath, ['--import', TELL_MEMORY, ...args], {
    encoding: 'utf8',
  });
  const ms = performance.now() - begun;
  if (status !== 0) throw new Error(stderr);
  return {ms, megabytes: Number(/RSS (\d+)/.exec(stderr)?.[1]) / 1024};
}
