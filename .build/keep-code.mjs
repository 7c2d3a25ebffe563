// Lets the program keep what the engine compiles of the care list; see src/compiled.ts. The engine compiles a function
// when it is first called, so the care list is made of the example room: whatever that calls is kept.
import {execFileSync} from 'node:child_process';
import {mkdtempSync, rmSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';

/** @param program its main file. Where the code cannot be kept the program only starts more slowly. */
export function keepCode(program) {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-build-'));
  const run = (args, env = {}) =>
    execFileSync(process.execPath, [program, ...args], {stdio: 'pipe', env: {...process.env, ...env}});
  try {
    const room = join(folder, 'room');
    run(['demo', room, '--no-open']);
    // The first list forecasts every lot, and the room keeps that: the second is what is usual.
    run(['today', '--room', room]);
    // Each adds what the one before did not call.
    run(['today', '--room', room], {TENERAL_KEEP_CODE: '1'});
    run(['today', '--room', room, '--json'], {TENERAL_KEEP_CODE: '1'});
  } catch (error) {
    console.warn(`The care list will start more slowly: ${error.message}`);
  } finally {
    rmSync(folder, {recursive: true, force: true});
  }
}
