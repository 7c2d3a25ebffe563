// The care list starts from code compiled beforehand, and answers alike without it.
import {spawnSync} from 'node:child_process';
import {cpSync, readdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {dirname, join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {program, temporaryFolder, teneral} from './commands/program.ts';

const NOW = '2026-06-12T08:10';
const room = join(temporaryFolder(), 'room');
const copy = temporaryFolder();

beforeAll(() => {
  teneral(['demo', room, '--no-open', '--now', NOW]);
  const dist = dirname(program);
  for (const name of ['dist', 'package.json', 'profiles'])
    cpSync(join(dist, '..', name), join(copy, name), {recursive: true});
});

const today = (main: string) => {
  const args = [main, '--room', room, '--now', NOW, 'today'];
  const {status, stdout, stderr} = spawnSync(process.execPath, args, {
    encoding: 'utf8',
    env: {...process.env, TZ: 'UTC'},
  });
  return {status, stdout, stderr};
};
const code = () => {
  const names = readdirSync(join(copy, 'dist')).filter(name => name.endsWith('.code'));
  expect(names).toHaveLength(1);
  return join(copy, 'dist', names[0]!);
};

describe('runCompiled(script)', () => {
  it('answers alike with the code kept, with code of another engine, with half of it and with none', () => {
    const usual = today(program);
    expect(usual).toMatchObject({status: 0, stderr: ''});
    expect(usual.stdout).toContain('to do');
    const main = join(copy, 'dist', 'main.mjs');
    const kept = readFileSync(code());
    const cases = [kept, Buffer.from('no code'), kept.subarray(0, kept.length / 2), Buffer.alloc(0)];
    for (const bytes of cases) {
      writeFileSync(code(), bytes);
      expect(today(main)).toEqual(usual);
    }
    rmSync(code());
    expect(today(main)).toEqual(usual);
  });
});
