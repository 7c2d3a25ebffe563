// The care list of a room of 300 units and 1,000 rules for single lots, against a process that does nothing.
import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {interleaved} from './rounds.ts';

const program = join(import.meta.dirname, '../../dist/main.mjs');
const UNITS = 300;
const RULES = 1000;
const NOW = '2026-06-12T08:10';

export function benchBigRoom(): string {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-bench-'));
  try {
    const room = join(folder, 'room');
    run('', 'init', room, '--name', 'big', '--zone', 'UTC');
    run(JSON.stringify(records()), '--room', room, '--now', NOW, 'apply', '-');
    const list = (...more: string[]) => run('', '--room', room, '--now', NOW, 'today', ...more);
    const {tasks} = JSON.parse(list('--json')) as {tasks: unknown[]};
    const {today, nothing} = interleaved({nothing: () => run(undefined, '-e', '0'), today: () => list()}, 9);
    return [
      `teneral today, in a room of ${UNITS} units and ${RULES} rules for single lots (${tasks.length} tasks)`,
      `  teneral today ${today.medianMs.toFixed(0)} ms (the first time ${today.firstMs.toFixed(0)} ms), node -e 0 ${nothing.medianMs.toFixed(0)} ms`,
      `  ${(today.medianMs / nothing.medianMs).toFixed(2)} times as long`,
    ].join('\n');
  } finally {
    rmSync(folder, {recursive: true});
  }
}

function records(): object[] {
  const units = Array.from({length: UNITS}, (_, i) => i);
  return [
    {record: 'sample', code: 'S1', collected: {from: '2026-05-30'}, method: 'search'},
    ...units.map(i => ({
      record: 'unit',
      code: `C${i}`,
      type: 'cage',
      place: `rack ${Math.floor(i / 30)}/${i % 30}`,
    })),
    ...units.map(i => ({
      record: 'lot',
      code: `L${i}`,
      sample: 'S1',
      unit: `C${i}`,
      at: '2026-06-01T09:00',
      stages: {'larva-4': 12},
    })),
    ...Array.from({length: RULES}, (_, i) => ({
      record: 'rule',
      code: `rule-${i}`,
      task: ['feed', 'clean', 'weigh', 'turn-leaves'][i % 4],
      for: {lot: `L${i % UNITS}`},
      every: {days: 1 + (i % 7)},
      at: '2026-06-01T09:00',
    })),
    ...units.map(i => ({record: 'care', task: 'feed', lot: `L${i}`, at: `2026-06-1${i % 2}T09:00`})),
  ];
}

/** Without input: node itself, with these arguments. */
function run(input: string | undefined, ...args: readonly string[]): string {
  const {status, stdout, stderr} = spawnSync(
    process.execPath,
    input === undefined ? [...args] : [program, ...args],
    {
      input: input ?? '',
      encoding: 'utf8',
      maxBuffer: 1e8,
    },
  );
  if (status !== 0) throw new Error(`${args.join(' ')} ended with ${status}: ${stderr}`);
  return stdout;
}
