// The example room: it shows the same whatever month it is, and what looking back on it says.
import {mkdtempSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {expect, test} from 'vitest';
import {makeDemo} from '../../src/work/demo.ts';
import {type Desk, openDesk} from '../../src/work/desk.ts';
import {outlooks} from '../../src/work/outlook.ts';
import {review} from '../../src/work/review.ts';
import {reviewWords} from '../../src/work/review-words.ts';
import {shortageWords} from '../../src/work/shortage-words.ts';
import {today} from '../../src/work/today.ts';

async function demoOn(day: string): Promise<Desk> {
  const dir = join(mkdtempSync(join(tmpdir(), 'demo-')), 'room');
  const session = {dir, by: 'A. Keeper', now: `${day}T08:10`, warn: () => {}};
  await makeDemo(session, dir);
  return openDesk(session, 'all');
}

async function shownOn(day: string): Promise<Record<string, string>> {
  const told = await outlooks(await demoOn(day), {futures: 4});
  return Object.fromEntries(
    told.map(({lot, forecast: {status, animal, rest}}) => [
      lot.code,
      `${status} ${animal.p50 === null ? 'no date' : 'dated'} ${rest.chance.toFixed(1)}`,
    ]),
  );
}

test('the example room gives the same lots their dates in any month', async () => {
  const june = await shownOn('2026-06-12');
  expect(Object.values(june).filter(shown => shown.includes(' dated '))).toHaveLength(12);
  for (const day of ['2026-09-23', '2026-11-26', '2027-03-05', '2028-02-29'])
    expect(await shownOn(day), day).toEqual(june);
}, 60_000);

test('looking back tells every forecast of a finished lot: judged, or passed over and why', async () => {
  const desk = await demoOn('2026-06-12');
  const {lots, forecasts, replayed, passedOver} = await review(desk);
  expect(replayed.length + passedOver.length).toBe(3 * lots);
  expect(forecasts.reduce((sum, {n}) => sum + n, 0)).toBe(replayed.length);
  // The codling moths were found in March, when nearly all rest, and had five weeks of cold in place of twelve; three
  // days before, pupae had been seen.
  expect(passedOver.map(({lot, when}) => `${lot} ${when}`)).toEqual(['26-014-A start', '26-014-A half']);
  for (const {why} of passedOver) expect(why).toContain('no date then');
  const words = reviewWords({lots, forecasts, profiles: [], replayed, passedOver}, desk);
  expect(words.lines).toContainEqual([
    'not judged',
    expect.stringMatching(/^2: no date then: about 8 in 10 were taken to rest/),
  ]);
}, 60_000);

test('on a Friday one person has less time than work, and what is left below the line is safe for days', async () => {
  const desk = await demoOn('2026-06-12');
  const list = await today(desk);
  expect(list.shortages).toMatchObject([{who: 'Ansa Querry', minutes: 28}]);
  expect(shortageWords(list, desk)).toEqual([
    expect.stringMatching(/^Ansa Querry has 28 minutes for \d+ minutes of care\. Below the line:$/),
    expect.stringMatching(/^ {2}E1 {2}moisten: safe until Mon /),
  ]);
}, 60_000);
