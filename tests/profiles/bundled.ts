// The profiles that come with the program, read as a room reads them.
import {readdirSync, readFileSync} from 'node:fs';
import {
  type GroupProfile,
  type Profile,
  parseRecord,
  type TaxonProfile,
} from '../../src/records/schema/index.ts';
import {rateModel} from '../../src/thermal/rate-model.ts';

const folder = new URL('../../profiles/', import.meta.url);

/** File names without ".json", in order. */
export const bundledCodes = readdirSync(folder)
  .filter(name => name.endsWith('.json'))
  .map(name => name.slice(0, -'.json'.length))
  .sort();

/** What stands in the file. */
export function asWritten(code: string): unknown {
  return JSON.parse(readFileSync(new URL(`${code}.json`, folder), 'utf8'));
}

/** One bundled profile, checked against the schema. */
export function bundled(code: string): Profile {
  const record = parseRecord(asWritten(code), `profiles/${code}.json`);
  if (record.record !== 'profile') throw new Error(`profiles/${code}.json holds a ${record.record}`);
  return record;
}

export function taxon(code: string): TaxonProfile {
  const profile = bundled(code);
  if ('variation' in profile || 'undated' in profile) throw new Error(`${code} is a group`);
  return profile;
}

export function group(code: string): GroupProfile {
  const profile = bundled(code);
  if (!('variation' in profile)) throw new Error(`${code} is not a group`);
  return profile;
}

/** Rate per day of one stage. */
export function rateOf(code: string, stage: string, temperatureC: number): number {
  const model = taxon(code).stages.find(each => each.stage === stage);
  if (model === undefined) throw new Error(`${code} has no stage ${stage}`);
  return rateModel(model.rate).ratePerDay(temperatureC);
}

/** Days at a constant temperature for stages that follow each other (`all`, or their names joined by "+"). */
export function daysAt(code: string, stages: string, temperatureC: number): number {
  return daysUnder(code, stages, stage => rateOf(code, stage, temperatureC));
}

/** The same where the mean rate of a stage over a day is known. */
export function daysUnder(code: string, stages: string, meanRate: (stage: string) => number): number {
  const names = stages === 'all' ? taxon(code).stages.map(({stage}) => stage) : stages.split('+');
  return names.reduce((days, stage) => days + 1 / meanRate(stage), 0);
}
