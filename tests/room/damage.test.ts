import {mkdir, readdir, readFile, rm, writeFile} from 'node:fs/promises';
import {join} from 'node:path';
import fc from 'fast-check';
import {expect, test} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {changeRoom} from '../../src/room/change.ts';
import {openRoom} from '../../src/room/open.ts';
import {sha256} from '../../src/room/sealed.ts';
import {entriesFor, importSeries, newFolder, newRoom, readings, write} from './rooms.ts';

const EVER = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY] as const;
const records = [
  {record: 'logger', code: 'L1', kind: 'automatic'},
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/2', logger: 'L1'},
  {record: 'note', text: 'the lamp of C1 is new'},
];

async function furnished(): Promise<{dir: string; file: string; bytes: Buffer}> {
  const dir = await newRoom();
  await write(dir, records);
  await importSeries(dir, 'L1', readings('2026-05-01T00:00Z', 48));
  const file = join(dir, 'room.json');
  return {dir, file, bytes: await readFile(file)};
}

/** The refusal that opening and changing both end in; neither touches the file. */
async function refusalOf(dir: string): Promise<Refusal> {
  const file = join(dir, 'room.json');
  const before = await readFile(file).catch(() => undefined);
  const opened = await openRoom(dir).catch(error => error);
  const changed = await write(dir, [{record: 'note', text: 'more'}]).catch(error => error);
  expect(opened).toBeInstanceOf(Refusal);
  expect(changed).toBeInstanceOf(Refusal);
  expect(changed.message).toBe(opened.message);
  expect(await readFile(file).catch(() => undefined)).toEqual(before);
  return opened;
}

test('a folder that does not exist, and one without a room, say how to make one', async () => {
  const folder = await newFolder();
  const absent = join(folder, 'nowhere');
  expect(await refusalOf(absent)).toMatchObject({what: 'there is no such folder', where: absent});
  const refusal = await refusalOf(folder);
  expect(refusal).toMatchObject({what: 'there is no room in this folder', where: folder});
  expect(refusal.mend).toContain('teneral init');
});

test('a room without its room.json names the way back', async () => {
  const {dir, file} = await furnished();
  await rm(file);
  const refusal = await refusalOf(dir);
  expect(refusal.what).toBe('room.json is missing');
  expect(refusal.mend).toContain('teneral restore');
});

test.each([
  ['empty', '', 'empty'],
  ['cut', '{"format":1,"sha256":"', 'cut or altered'],
  ['binary', Buffer.from([0xff, 0xfe, 0x00, 0x80, 0x81]), 'no text'],
  ['another JSON', '[1, 2]', 'no room'],
  ['JSON of another form', '{"format":1,"sha256":"","content":{"name":"x"}}', 'it is missing'],
])('a room.json that is %s is named as damaged, with the way back', async (_, content, what) => {
  const {dir, file} = await furnished();
  await writeFile(file, content);
  const refusal = await refusalOf(dir);
  expect(refusal.what).toContain(what);
  expect(refusal.where).toContain(file);
  expect(refusal.mend).toContain('teneral restore');
});

test('a room of a newer format asks for the newer program', async () => {
  const {dir, file, bytes} = await furnished();
  await writeFile(file, bytes.toString().replace('{"format":1', '{"format":2'));
  const refusal = await refusalOf(dir);
  expect(refusal.what).toContain('format 2');
  expect(refusal.mend).toContain('newer teneral');
});

test('a folder in place of room.json is said to be one', async () => {
  const {dir, file} = await furnished();
  await rm(file);
  await mkdir(file);
  expect((await refusalOf(dir)).what).toContain('a folder stands where a file belongs');
});

test('a room.json edited by hand is used as it stands, with a warning', async () => {
  const {dir, file, bytes} = await furnished();
  await writeFile(file, bytes.toString().replace('the lamp of C1', 'the lamp of C2'));
  const room = await openRoom(dir);
  expect(room.entries[2]?.record).toEqual({record: 'note', text: 'the lamp of C2 is new'});
  expect(room.warnings).toHaveLength(1);
  expect(room.warnings[0]).toContain(file);
});

test('a change keeps an edited room.json aside, and makes its content the room’s own', async () => {
  const {dir, file, bytes} = await furnished();
  const edited = bytes.toString().replace('the lamp of C1', 'the lamp of C2');
  await writeFile(file, edited);
  const room = await write(dir, [{record: 'note', text: 'more'}]);
  expect(room.warnings).toEqual([]);
  expect(room.entries[2]?.record).toEqual({record: 'note', text: 'the lamp of C2 is new'});
  const [aside] = (await readdir(join(dir, 'backups'))).filter(name => name.startsWith('set-aside'));
  expect(await readFile(join(dir, 'backups', aside!, 'room.json'), 'utf8')).toBe(edited);
});

test('a room.json that an editor only laid out anew is as it was written', async () => {
  const {dir, file, bytes} = await furnished();
  const before = await openRoom(dir);
  await writeFile(file, JSON.stringify(JSON.parse(bytes.toString()), null, 2));
  const room = await openRoom(dir);
  expect(room.warnings).toEqual([]);
  expect(room.entries).toEqual(before.entries);
  expect(room.revision).toBe(before.revision);
});

test('a hand edit that breaks a record is refused, naming entry, field and value', async () => {
  const {dir, file, bytes} = await furnished();
  await writeFile(file, bytes.toString().replace('"cage"', '"kennel"'));
  const refusal = await refusalOf(dir);
  expect(refusal.where).toContain('entries.1');
  expect(refusal.message).toContain('kennel');
});

test.each([
  ['an id twice', '"id":"e3"', '"id":"e2"', 'e2'],
  ['a numbering that would use an id again', '"next":{"entry":4', '"next":{"entry":3', 'e3'],
  ['a path out of the room', 'readings/L1/2026-05-1.json', '../../secret.json', 'path'],
])('a hand edit that leaves %s is refused', async (_, from, to, named) => {
  const {dir, file, bytes} = await furnished();
  expect(bytes.toString()).toContain(from);
  await writeFile(file, bytes.toString().replace(from, to));
  expect((await refusalOf(dir)).message).toContain(named);
});

test('room.json cut anywhere, or with any byte altered, is refused, or read as it stands; nothing else happens', async () => {
  const {dir, file, bytes} = await furnished();
  const {entries} = await openRoom(dir);
  const damage = fc.oneof(
    fc.record({cut: fc.nat({max: bytes.length - 1})}),
    fc.record({at: fc.nat({max: bytes.length - 1}), flip: fc.integer({min: 1, max: 255})}),
  );
  await fc.assert(
    fc.asyncProperty(damage, async how => {
      const damaged = 'cut' in how ? bytes.subarray(0, how.cut) : Buffer.from(bytes);
      if ('flip' in how) damaged[how.at]! ^= how.flip;
      await writeFile(file, damaged);
      const opened = await openRoom(dir).catch((error: unknown) => error);
      if (opened instanceof Error) expect(opened).toBeInstanceOf(Refusal);
      else expect(opened).toSatisfy(room => room.warnings.length === 1 || isDeepEqual(room.entries, entries));
      expect(await readFile(file)).toEqual(damaged);
    }),
    {numRuns: 200},
  );
});

test('any byte altered in a document beside room.json is found, and named with the way back', async () => {
  const {dir} = await furnished();
  const path = join(dir, 'readings/L1/2026-05-1.json');
  const bytes = await readFile(path);
  const room = await openRoom(dir);
  await fc.assert(
    fc.asyncProperty(fc.nat({max: bytes.length - 1}), fc.integer({min: 1, max: 255}), async (at, flip) => {
      const damaged = Buffer.from(bytes);
      damaged[at]! ^= flip;
      await writeFile(path, damaged);
      const refusal = await room.series('L1', ...EVER).catch((error: unknown) => error);
      expect(refusal).toBeInstanceOf(Refusal);
      expect(refusal).toMatchObject({where: path, mend: expect.stringContaining('teneral restore')});
    }),
    {numRuns: 60},
  );
});

test('a missing document is named, unless a newer room.json does without it', async () => {
  const {dir} = await furnished();
  const path = join(dir, 'readings/L1/2026-05-1.json');
  const opened = await openRoom(dir);
  const room = await importSeries(dir, 'L1', readings('2026-05-10T00:00Z', 5));
  await rm(path);
  expect((await opened.series('L1', ...EVER)).atDays).toHaveLength(53);
  await rm(join(dir, 'readings/L1/2026-05-2.json'));
  const refusal = await room.series('L1', ...EVER).catch((error: unknown) => error);
  expect(refusal).toMatchObject({what: 'this part of the room is missing'});
});

test('a room.json that somebody edits while a change is decided is read again', async () => {
  const {dir, file, bytes} = await furnished();
  let rounds = 0;
  const room = await changeRoom(
    dir,
    async seen => {
      if (++rounds === 1) await writeFile(file, bytes.toString().replace('lamp of C1', 'lamp of C2'));
      return {entries: entriesFor(seen, [{record: 'note', text: 'more'}])};
    },
    {by: 'anna'},
  );
  expect(rounds).toBe(2);
  expect(room.entries.map(({record}) => record)).toContainEqual({
    record: 'note',
    text: 'the lamp of C2 is new',
  });
});

test('the checksum in room.json is SHA-256 of its content as it stands in the file', async () => {
  const {bytes} = await furnished();
  const [, stated, content] = /^\{"format":1,"sha256":"(\w{64})","content":(.*)\}\n$/s.exec(
    bytes.toString(),
  )!;
  // RFC 6234 names the function; its one-block test vector "abc" is from FIPS 180-4 examples (from memory).
  expect(sha256('abc')).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  expect(stated).toBe(sha256(content!));
});

function isDeepEqual(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}
