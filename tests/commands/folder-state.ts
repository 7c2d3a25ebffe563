// Every file of a folder with its bytes, to be compared.
import {readdirSync, readFileSync, statSync} from 'node:fs';
import {join} from 'node:path';

/** By path, the bytes of each file as text; folders end with a slash. */
export function stateOf(dir: string): Readonly<Record<string, string>> {
  const paths = readdirSync(dir, {recursive: true, encoding: 'utf8'}).sort();
  return Object.fromEntries(
    paths.map(path => {
      const full = join(dir, path);
      return statSync(full).isDirectory() ? [`${path}/`, ''] : [path, readFileSync(full).toString('latin1')];
    }),
  );
}
