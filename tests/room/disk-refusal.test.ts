import {expect, test} from 'vitest';
import {Refusal} from '../../src/records/refusal.ts';
import {diskRefusal} from '../../src/room/disk-refusal.ts';

const failed = (code: string) => Object.assign(new Error(code), {code});

test.each([
  ['EACCES', 'there is no permission'],
  ['EROFS', 'the disk can only be read'],
  ['ENOSPC', 'the disk is full'],
  ['EXDEV', 'the system says EXDEV'],
])('%s of a file is refused with the words "%s", the file, and what to do', (code, what) => {
  const refusal = diskRefusal(failed(code), '/rooms/north/room.json');
  expect(refusal).toBeInstanceOf(Refusal);
  expect(refusal).toMatchObject({what, where: '/rooms/north/room.json', mend: expect.stringMatching(/\.$/)});
});

test('a refusal, a mistake of the program and a foreign error stay what they are', () => {
  for (const error of [new Refusal('a', 'b', 'c'), new RangeError('x'), failed('OTHER'), 'text'])
    expect(diskRefusal(error, '/x')).toBe(error);
});
