// What a person leaves out of a record is filled in before it is written down: when it happened, and codes.
import {heaviestFirst} from './candidates.ts';
import {codesGiven} from './codes.ts';
import type {Profile, RecordOf, RoomRecord} from './schema/index.ts';
import {type SpecimenRecord, specimenCodes} from './specimen-codes.ts';
import type {Stage} from './stage.ts';
import type {RoomState} from './state.ts';

export interface Setting {
  /** Now, ISO 8601 with the zone's offset. */
  readonly now: string;
  readonly before: RoomState;
  /** Profiles of the candidates of the lots concerned, where known. */
  readonly profiles: ReadonlyMap<string, Profile>;
}

/**
 * The records of a batch with `at` (when it was written down, else now), specimen codes and the stage of what hatched
 * filled in. A sample, and the first record of what stands or holds (a unit, a rule, a profile …), keeps no `at` where
 * none is given: it holds from the beginning.
 */
export function complete(records: readonly RoomRecord[], setting: Setting): RoomRecord[] {
  const {now, before, profiles} = setting;
  const used = codesEverUsed(before, records);
  const standing = new Set(
    before.history.filter(({id}) => !before.voided.has(id)).flatMap(({record}) => standingName(record) ?? []),
  );

  return records.map(record => {
    const name = standingName(record);
    if (name !== undefined && !standing.has(name)) {
      standing.add(name);
      return record;
    }
    switch (record.record) {
      case 'sample':
      case 'subsample':
      case 'extremes':
      case 'void':
        return record;
      case 'emergence':
      case 'parasitoid':
      case 'voucher':
        return {...record, at: record.at ?? record.recordedAt ?? now, codes: codesFor(record, used)};
      case 'hatch':
        return {
          ...record,
          at: record.at ?? record.recordedAt ?? now,
          stage: hatchedStage(record, records, before, profiles),
        };
      case 'revision': {
        const {specimen, candidates} = record;
        const named = candidates === undefined ? before.specimens.get(specimen ?? '')?.taxon : undefined;
        const at = record.at ?? record.recordedAt ?? now;
        return {...record, at, ...(named === undefined ? {} : {taxon: record.taxon ?? named})};
      }
      default:
        return {...record, at: record.at ?? record.recordedAt ?? now};
    }
  });
}

/** By what name a record is the first of something that stands or holds, or a change of it. */
function standingName(record: RoomRecord): string | undefined {
  switch (record.record) {
    case 'unit':
    case 'logger':
    case 'rule':
      return `${record.record} ${record.code}`;
    case 'profile':
      return `profile ${record.profile}`;
    case 'person':
      return `person ${record.name}`;
    case 'calendar':
    case 'setting':
      return record.record;
    default:
      return undefined;
  }
}

/** Codes given by anyone at any time, also in entries that are void: no code is ever used again. */
function codesEverUsed(before: RoomState, records: readonly RoomRecord[]): Set<string> {
  const used = new Set([...before.specimens.keys(), ...before.lots.keys(), ...before.samples.keys()]);
  for (const {record} of before.history) for (const code of codesGiven(record)) used.add(code);
  for (const record of records) for (const code of codesGiven(record)) used.add(code);
  return used;
}

/** What was given stands, also where it is wrong: decide.ts says so. */
function codesFor(record: SpecimenRecord, used: Set<string>): string[] {
  if (record.codes !== undefined) return record.codes;
  const codes = specimenCodes(record, code => used.has(code));
  for (const code of codes) used.add(code);
  return codes;
}

/** What hatches is in the first stage after the egg of the lot's likeliest candidate. */
function hatchedStage(
  record: RecordOf<'hatch'>,
  records: readonly RoomRecord[],
  {lots}: RoomState,
  profiles: ReadonlyMap<string, Profile>,
): Stage | undefined {
  if (record.stage !== undefined) return record.stage;
  const lot =
    lots.get(record.lot) ?? records.find(other => other.record === 'lot' && other.code === record.lot);
  const candidates = lot !== undefined && 'candidates' in lot ? (lot.candidates ?? []) : [];
  const [likeliest] = heaviestFirst(candidates);
  const profile = profiles.get(likeliest?.profile ?? '');
  return profile === undefined ? undefined : firstStageAfterEgg(profile);
}

function firstStageAfterEgg({stages}: Profile): Stage | undefined {
  const first = stages.find(({stage}) => stage !== 'egg');
  if (first === undefined) return undefined;
  return 'instars' in first && first.instars !== undefined ? `${first.stage}-1` : first.stage;
}
