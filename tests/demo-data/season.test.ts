// The example season holds together by itself, before any room is made of it.
import {readFileSync} from 'node:fs';
import {describe, expect, it} from 'vitest';
import type {Civil} from '../../src/records/civil.ts';
import {complete} from '../../src/records/complete.ts';
import {decide} from '../../src/records/decide.ts';
import type {Entry} from '../../src/records/entry.ts';
import {fold} from '../../src/records/fold.ts';
import {parseRecord, type RoomRecord} from '../../src/records/schema/index.ts';
import {total} from '../../src/records/stage.ts';
import {bundled, bundledCodes} from '../profiles/bundled.ts';

const folder = new URL('../../demo-data/', import.meta.url);
const text = (name: string) => readFileSync(new URL(name, folder), 'utf8');
const written: readonly unknown[] = JSON.parse(text('season.json'));
/** The evening of the day that becomes today. */
const now = Date.parse('2026-06-12T18:00:00Z');

/** Civil time where every zone is UTC: the season itself names none. */
const utc: Civil = {
  zone: 'UTC',
  dayOf: at => new Date(at).toISOString().slice(0, 10),
  at: (day, time) => Date.parse(`${day}T${time}Z`),
  addDays: (day, days) => new Date(Date.parse(day) + days * 86_400_000).toISOString().slice(0, 10),
  weekdayOf: day => (['sun', 'mon', 'tue', 'wed', 'thu', 'fri', 'sat'] as const)[new Date(day).getUTCDay()]!,
  offsetMs: () => 0,
  iso: at => new Date(at).toISOString(),
};

/** Every local instant with an offset, however deep it stands. */
function inUtc<Value>(value: Value): Value {
  return JSON.parse(JSON.stringify(value).replace(/"(\d{4}-\d\d-\d\dT\d\d:\d\d)"/g, '"$1:00Z"')) as Value;
}

function daybook(): Entry[] {
  const records = written.map((value, i) => inUtc(parseRecord(value, `season.json, record ${i + 1}`)));
  const profiles = new Map(bundledCodes.map(code => [code, bundled(code)]));
  const completed = complete(records, {now: utc.iso(now), before: fold([], now), profiles});
  return completed.map((record: RoomRecord, i) => ({
    id: String(i).padStart(6, '0'),
    request: 'season',
    recordedAt: 'recordedAt' in record && record.recordedAt ? record.recordedAt : utc.iso(now),
    by: 'somebody',
    record,
  }));
}

const entries = daybook();
const room = fold(entries, now);

describe('the example season', () => {
  it('is granted as one batch: every balance holds, nothing names what is not there', () => {
    const known = {now, civil: utc, profiles: new Set(bundledCodes)};
    expect(() => decide(fold([], now), entries, known, i => JSON.stringify(written[i]))).not.toThrow();
  });

  it('stands in the order of writing, and nothing in it is later than the day that becomes today', () => {
    const times = entries.map(({recordedAt}) => recordedAt);
    expect(times).toEqual([...times].sort());
    expect(times.at(-1)! < utc.iso(now)).toBe(true);
  });

  it('holds units of all three types, open and closed lots, hidden and counted animals, many methods', () => {
    const types = new Set([...room.units.values()].map(history => history[0]!.value.type));
    expect(types).toEqual(new Set(['cage', 'aquarium', 'emergence-box']));
    const lots = [...room.lots.values()];
    expect(lots.filter(({closed}) => closed === undefined).length).toBeGreaterThanOrEqual(12);
    expect(lots.some(({closed}) => closed !== undefined)).toBe(true);
    expect(lots.some(({material}) => material !== undefined)).toBe(true);
    expect(lots.some(({candidates}) => candidates.every(({profile}) => profile === 'araneae'))).toBe(true);
    expect(new Set([...room.samples.values()].map(({method}) => method)).size).toBeGreaterThanOrEqual(10);
  });

  it('closes a lot with every animal accounted for, named adults and parasitoids among them', () => {
    const lot = room.lots.get('26-014-A')!;
    expect(lot.closed).toBeDefined();
    expect(total(lot.alive)).toBe(0);
    expect(lot.tally).toMatchObject({started: 18, parasitised: 2});
    expect(room.specimens.get('26-014-A-1')).toMatchObject({taxon: 'Cydia pomonella'});
    expect(room.specimens.get('26-014-A-p1')).toMatchObject({kind: 'parasitoid', taxon: 'Trichomma sp.'});
  });

  it('has a sample out of preservative that no lot was made of, and one out of water whose animals lived', () => {
    const lotsOf = (sample: string) => [...room.lots.values()].filter(lot => lot.sample === sample);
    const media = [...room.samples.values()].filter(({medium}) => medium !== 'none');
    expect(media.map(({medium}) => medium).sort()).toEqual(['glycol', 'water']);
    for (const {code, medium} of media) expect(lotsOf(code).length).toBe(medium === 'water' ? 1 : 0);
  });
});

describe('its logger files', () => {
  it.each([
    ['L1', /^\d{4}-\d\d-\d\dT\d\d:\d\d:00,\d+\.\d+,\d+\.\d$/, 3360],
    ['L2', /^\d\d\.\d\d\.\d{4} \d\d:\d\d;\d+,\d;\d+,\d$/, 1644],
    ['L3', /^"\d\d\/\d\d\/\d{4} \d\d:\d\d:00 [AP]M",\d+\.\d,\d+$/, 1623],
  ])('%s has one form from end to end', (logger, form, rows) => {
    const lines = text(`loggers/${logger}.csv`).trim().split(/\r?\n/).slice(1);
    for (const line of lines) expect(line).toMatch(form);
    expect(lines.length).toBe(rows);
  });
});
