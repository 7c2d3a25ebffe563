// Whatever is wrong with what a person gives: one line that says what, where and what to do, status 1, and nothing changed.
import {cpSync, mkdirSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {join} from 'node:path';
import {beforeAll, describe, expect, it} from 'vitest';
import {stateOf} from './folder-state.ts';
import {newRoom, type Said, temporaryFolder, teneral} from './program.ts';
import {SEASON_NOW, season} from './season.ts';

const files = temporaryFolder();
let room: string;

function file(name: string, content: string | Uint8Array): string {
  const path = join(files, name);
  writeFileSync(path, content);
  return path;
}

const noText = Uint8Array.from({length: 3000}, (_, i) => (i * 167 + 13) % 256);
const binary = file('records.json', noText);
const words = file('words.txt', 'lorem\nipsum\n');
const csv = {
  empty: file('empty.csv', ''),
  blank: file('blank.csv', '\n \n\n'),
  binary: file('binary.csv', noText),
  headed: file('headed.csv', 'time,temperature\n'),
  humid: file('humid.csv', 'time,humidity\n2026-06-03 09:00,50\n2026-06-03 10:00,52\n'),
  words: file('words.csv', 'lorem\nipsum\n'),
  good: file('good.csv', 'time,temperature\n2026-06-03T09:00,20\n'),
};

beforeAll(() => {
  const {dir, apply, at} = newRoom('Europe/Vienna');
  room = dir;
  for (const {status, err} of [apply(SEASON_NOW, season), at(SEASON_NOW, 'import', 'L1', csv.good)])
    if (status !== 0) throw new Error(err);
});

/** What standard error says of a refusal: one line, in words for people. */
function refused({status, out, err}: Said): string {
  expect({status, out}, err).toEqual({status: 1, out: ''});
  const [line = '', ...rest] = err.split('\n');
  expect(rest).toEqual(['']);
  expect(line).toMatch(/^teneral: \S.*\. \S.*[.!?”"]$/);
  expect(line).not.toMatch(/node:|\.mjs|\.ts:|undefined|\[object|ENOENT|EISDIR|\p{Cc}/u);
  return line.slice('teneral: '.length);
}

describe('refuses, changing nothing:', () => {
  it.each<[what: string, words: readonly string[], line: RegExp]>([
    ['an unknown lot', ['balance', '26-031-X'], /balance: there is no lot "26-031-X"/],
    ['an unknown lot to forecast', ['forecast', 'nobody'], /there is no lot "nobody".*teneral list lots/],
    ['an unknown code to trace', ['trace', '26-031-A-9'], /26-031-A-9.*Nearest known is 26-031-A-\d/],
    ['an unknown lot to record', ['check', '26-031-X'], /no lot 26-031-X.*Nearest known/],
    ['an unknown unit', ['move', '26-031-A', 'C4'], /there is no unit C4.*Nearest known is C3/],
    ['an unknown unit to look at', ['climate', 'C4'], /there is no unit "C4"/],
    ['an unknown logger', ['log', 'L7', '20'], /there is no logger L7.*Nearest known is L1/],
    ['an unknown logger to import', ['import', 'L7', csv.good], /there is no logger "L7".*L1/],
    ['an unknown specimen', ['identify', '26-031-A-9', 'Pieris'], /there is no specimen 26-031-A-9/],
    ['an unknown profile', ['profile', 'show', 'pieris'], /there is no profile "pieris"/],
    ['an unknown entry', ['void', 'e999'], /there is no entry e999/],
    ['an unknown task', ['done', 'feed:C3:2026-01-01', '--seen', 'mould=no'], /there is no task/],
    [
      'a count above what is alive',
      ['count', '26-031-A', 'pupa=30'],
      /30 counted where 20 are alive \(24 st/,
    ],
    ['more adults than are alive', ['emerge', '26-031-A', '--female', '21'], /21 emerged where 20 are alive/],
    ['a date in the future', ['check', '26-031-A', '--at', '2026-06-21'], /2026-06-21T00:00.*future.*now is/],
    ['a date that is none', ['check', '26-031-A', '--at', '2026-02-30'], /"2026-02-30" is no instant/],
    ['a --now that is none', ['list', 'lots', '--now', 'noon'], /--now: "noon" is no instant.*like 20/],
    ['a day that is none', ['today', '--on', '2026-13-01'], /--on: "2026-13-01" is no day.*like 20/],
    ['a wrong zone to import in', ['import', 'L1', csv.good, '--zone', 'Nowhere'], /no time zone "Nowhere"/],
    [
      'an unknown kind of unit',
      ['unit', 'C9', 'box', 'shed'],
      /field type: "box" is not acc.*cage, aquarium/,
    ],
    ['an unknown stage', ['count', '26-031-A', 'worm=3'], /"worm" is not accepted.*pupa/],
    ['half an animal', ['loss', '26-031-A', '1.5', '--cause', 'dead'], /1\.5 is not accepted.*whole number/],
    [
      'a second use of a code',
      ['sample', '26-031', 'sweep', '--collected', '2026-06-01'],
      /26-031 is in use/,
    ],
    [
      'a file that is not there',
      ['import', 'L1', join(files, 'none.csv')],
      /none\.csv: there is no such file/,
    ],
    ['a folder in place of a file', ['import', 'L1', files], /this is a folder, not a file/],
    ['an empty CSV', ['import', 'L1', csv.empty], /empty\.csv: the file is empty/],
    ['a blank CSV', ['import', 'L1', csv.blank], /blank\.csv: /],
    ['a binary CSV', ['import', 'L1', csv.binary], /binary\.csv: the file is no text/],
    ['a CSV with a heading alone', ['import', 'L1', csv.headed], /headed\.csv: .*no row/],
    ['a CSV without temperatures', ['import', 'L1', csv.humid], /humid\.csv: .*temperature.*--columns/],
    ['a CSV of words', ['import', 'L1', csv.words], /words\.csv: no column holds dates/],
    ['one bad file among good ones', ['import', 'L1', csv.good, csv.empty], /empty\.csv: /],
    ['records from a file not there', ['apply', join(files, 'none')], /none: there is no such file/],
    ['records from a folder', ['apply', files], /this is a folder, not a file/],
    ['records from a binary file', ['apply', binary], /records\.json: the file is no text/],
    ['records that are no JSON', ['apply', words], /words\.txt, line 1: the text is not JSON/],
    [
      'rows nobody said the meaning of',
      ['apply', csv.words],
      /words\.csv: nobody said what a row stands for/,
    ],
    ['a profile that is none', ['profile', 'check', csv.words], /words\.csv: this is not JSON/],
    ['a room where one is', ['init', '.', '--name', 'x', '--zone', 'UTC'], /something is there already/],
  ])('%s', (_, words, line) => {
    const before = stateOf(room);
    expect(refused(teneral(['--room', room, '--now', SEASON_NOW, ...words]))).toMatch(line);
    expect(stateOf(room)).toEqual(before);
  });

  it('a calculation over bad files', () => {
    for (const bad of [csv.empty, csv.binary, csv.humid, files, join(files, 'none.csv')])
      expect(refused(teneral(['degree-days', bad, '--lower', '10']))).toContain(bad);
  });

  it('binary records on standard input', () => {
    const before = stateOf(room);
    const said = teneral(
      ['--room', room, '--now', SEASON_NOW, 'apply', '-'],
      String.fromCharCode(0, 1, 27, 7),
    );
    expect(refused(said)).toMatch(/standard input, line 1: the text is not JSON/);
    expect(stateOf(room)).toEqual(before);
  });

  it('no room there, a file in its place, a wrong zone for a new one', () => {
    expect(refused(teneral(['today', '--room', join(files, 'none')]))).toMatch(
      /no such folder.*teneral init/,
    );
    expect(refused(teneral(['today', '--room', files]))).toMatch(/no room in this folder.*teneral init/);
    expect(refused(teneral(['today', '--room', csv.good]))).toMatch(/a file stands where a folder belongs/);
    const zone = ['--name', 'x', '--zone', 'Mars/Base'];
    expect(refused(teneral(['init', join(files, 'new'), ...zone]))).toMatch(/no time zone "Mars\/Base"/);
    expect(Object.keys(stateOf(files))).not.toContain('new/');
  });
});

describe('a damaged room', () => {
  const whole = (dir: string) => readFileSync(join(dir, 'room.json'), 'utf8');

  it.each<[what: string, damage: (dir: string) => void, line: RegExp]>([
    ['cut', dir => writeFileSync(join(dir, 'room.json'), whole(dir).slice(0, 2000)), /cut or altered/],
    ['emptied', dir => writeFileSync(join(dir, 'room.json'), ''), /the file is empty/],
    ['overwritten by noise', dir => writeFileSync(join(dir, 'room.json'), noText), /this is no text/],
    ['of zeros', dir => writeFileSync(join(dir, 'room.json'), new Uint8Array(5000)), /room is damaged/],
    ['another JSON', dir => writeFileSync(join(dir, 'room.json'), '{"a":1}'), /JSON, but no room/],
    [
      'with a record that cannot be',
      dir => writeFileSync(join(dir, 'room.json'), whole(dir).replace('"pupa":8', '"pupa":"8"')),
      /room is damaged: .*"8" is not accepted/,
    ],
    ['missing', dir => rmSync(join(dir, 'room.json')), /room\.json is missing.*teneral restore/],
    [
      'a folder in its place',
      dir => {
        rmSync(join(dir, 'room.json'));
        mkdirSync(join(dir, 'room.json'));
      },
      /a folder stands where a file belongs/,
    ],
  ])('%s is named with the way back, and never overwritten', (_, damage, line) => {
    const dir = join(temporaryFolder(), 'damaged');
    cpSync(room, dir, {recursive: true});
    damage(dir);
    const before = stateOf(dir);
    for (const words of [['today'], ['log', 'L1', '20'], ['forecast']])
      expect(refused(teneral(['--room', dir, '--now', SEASON_NOW, ...words]))).toMatch(line);
    const verified = teneral(['--room', dir, 'verify', '--json']);
    expect(verified.status).toBe(1);
    expect(verified.out.replaceAll('\\"', '"')).toMatch(line);
    expect(stateOf(dir)).toEqual(before);
  });

  it('whose readings were altered says so when they are needed', () => {
    const dir = join(temporaryFolder(), 'damaged');
    cpSync(room, dir, {recursive: true});
    const readings = Object.keys(stateOf(dir)).find(name => /^readings\/.*\.json$/.test(name))!;
    writeFileSync(join(dir, readings), whole(dir));
    const before = stateOf(dir);
    expect(refused(teneral(['--room', dir, '--now', SEASON_NOW, 'forecast', '26-031-A']))).toContain(
      readings,
    );
    const verified = teneral(['--room', dir, 'verify', '--json']);
    expect(verified.status).toBe(1);
    expect(JSON.parse(verified.out)).toMatchObject({
      sound: false,
      problems: [{where: expect.stringContaining(readings), mend: expect.stringContaining('restore')}],
    });
    expect(stateOf(dir)).toEqual(before);
  });

  it('that was only edited by hand is served with a warning', () => {
    const dir = join(temporaryFolder(), 'edited');
    cpSync(room, dir, {recursive: true});
    writeFileSync(join(dir, 'room.json'), whole(dir).replace('Heron wood', 'Heron Wood'));
    const {status, out, err} = teneral(['--room', dir, '--now', SEASON_NOW, 'list', 'samples']);
    expect({status, out: out.includes('Heron Wood')}).toEqual({status: 0, out: true});
    expect(err).toMatch(/^teneral: [^\n]*room\.json is not as it was written[^\n]*\n$/);
    expect(teneral(['--room', dir, 'verify']).status).toBe(1);
  });
});
