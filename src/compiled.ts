// Runs a script of the program from the code that was compiled of it when the program was built. Compiling a large
// script anew takes longer than answering a short question with it.
import {existsSync, readFileSync, writeFileSync} from 'node:fs';
import {createRequire} from 'node:module';
import {Script} from 'node:vm';

/** Set by the build: what the engine compiled is to be kept when the program ends. */
const KEEP_CODE = 'TENERAL_KEEP_CODE';

/**
 * Run a script that is written as one function of `require` and of the script's own path. The code kept of it serves
 * one engine; where there is none, or the engine does not take it, the script is compiled: slower, otherwise the same.
 * @param path of the script, in ASCII
 */
export function runCompiled(path: string): void {
  const code = `${path}.${process.platform}-${process.arch}-${process.versions.v8}.code`;
  const cachedData = existsSync(code) ? readFileSync(code) : undefined;
  const script = new Script(readFileSync(path, 'latin1'), {filename: path, cachedData});
  if (process.env[KEEP_CODE] !== undefined)
    process.on('exit', () => writeFileSync(code, script.createCachedData()));
  script.runInThisContext()(createRequire(path), path);
}
