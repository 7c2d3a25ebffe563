// Both days of a clock change, in zones that change by an hour, by half an hour, and in the south.
// Dates of the changes: IANA time zone database.
import {describe, expect, it} from 'vitest';
import {zoneNamed} from '../../../src/exchange/zone.ts';
import {degreeDaysOfFile} from '../../../src/work/degree-days.ts';
import {read} from './reading.ts';

const STEP_MS = 600_000;
const wishes = {lower: 0, cutoff: 'horizontal', unit: 'C', maxGapHours: 3} as const;

/** Three days around a change as a logger on local time writes them: every ten minutes, without offsets. */
function localFile(zone: string, middle: string): {readonly text: string; readonly rows: number} {
  const {offsetMs} = zoneNamed(zone);
  const localDay = (at: number) => new Date(at + offsetMs(at)).toISOString().slice(0, 10);
  const noon = Date.parse(`${middle}T12:00Z`);
  const [first, last] = [-1, 1].map(days => new Date(noon + days * 86_400_000).toISOString().slice(0, 10));
  const rows: string[] = [];
  for (let at = noon - 3 * 86_400_000; at < noon + 3 * 86_400_000; at += STEP_MS) {
    const day = localDay(at);
    if (day < first! || day > last!) continue;
    rows.push(`${new Date(at + offsetMs(at)).toISOString().slice(0, 16).replace('T', ' ')},10`);
  }
  return {text: `time,temp\n${rows.join('\n')}\n`, rows: rows.length};
}

describe('every hour of a day on which the clocks change counts once', () => {
  it.each([
    ['Europe/Vienna', '2026-03-29', 23],
    ['Europe/Vienna', '2026-10-25', 25],
    ['America/New_York', '2026-03-08', 23],
    ['America/New_York', '2026-11-01', 25],
    ['Australia/Lord_Howe', '2026-10-04', 23.5],
    ['Australia/Lord_Howe', '2026-04-05', 24.5],
    ['America/Santiago', '2026-09-06', 23],
    ['Asia/Tokyo', '2026-03-29', 24],
  ])('%s, %s has %d hours', (zone, day, hours) => {
    const {text, rows} = localFile(zone, day);
    const file = read(text, {zone});
    expect(file).toMatchObject({rows, duplicates: 0, rejected: []});
    if (file.kind !== 'readings') throw new Error('these are readings');
    // No reading is shifted, doubled or lost: they stand ten minutes apart.
    for (let i = 1; i < file.at.length; i++) expect(file.at[i]! - file.at[i - 1]!).toBe(STEP_MS);
    // At 10 °C above a threshold of 0 °C an hour is 10/24 degree-days.
    const answer = degreeDaysOfFile(file, wishes).days.find(each => each.day === day);
    expect(answer?.degreeDays).toBeCloseTo((10 * hours) / 24, 9);
  });
});
