// Every file of a room with its bytes, to be compared.
import {createHash} from 'node:crypto';
import {readdirSync, readFileSync, statSync} from 'node:fs';
import {join} from 'node:path';

/** By path, a hash of each file; folders end with a slash. The cache is left out: it may be made anew at any time. */
export function stateOf(dir: string): Readonly<Record<string, string>> {
  const paths = readdirSync(dir, {recursive: true, encoding: 'utf8'}).sort();
  return Object.fromEntries(
    paths
      .filter(path => !path.startsWith('cache'))
      .map(path => {
        const full = join(dir, path);
        return statSync(full).isDirectory() ? [`${path}/`, ''] : [path, hashOf(readFileSync(full))];
      }),
  );
}

function hashOf(bytes: Buffer): string {
  return createHash('sha256').update(bytes).digest('base64url');
}
