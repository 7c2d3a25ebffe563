// The care list of the example room, against a process that does nothing.
import {spawnSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {interleaved} from './rounds.ts';

const program = join(import.meta.dirname, '../../dist/main.mjs');

export function benchToday(): string {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-bench-'));
  try {
    const room = join(folder, 'room');
    const made = node(program, 'demo', room, '--no-open');
    if (made.status !== 0)
      return `teneral today is not timed: the example room cannot be made (${made.stderr.trim()})`;
    const {today, nothing} = interleaved(
      {
        nothing: () => node('-e', '0'),
        today: () => {
          const {status, stderr} = node(program, 'today', '--room', room);
          if (status !== 0) throw new Error(`teneral today ended with ${status}: ${stderr}`);
        },
      },
      15,
    );
    return [
      'teneral today, in the example room',
      `  teneral today ${today.medianMs.toFixed(0)} ms (the first time ${today.firstMs.toFixed(0)} ms), node -e 0 ${nothing.medianMs.toFixed(0)} ms`,
      `  ${(today.medianMs / nothing.medianMs).toFixed(2)} times as long`,
    ].join('\n');
  } finally {
    rmSync(folder, {recursive: true});
  }
}

function node(...args: readonly string[]) {
  return spawnSync(process.execPath, args, {encoding: 'utf8'});
}
