// A logger's readings without what a person masked and what cannot be.
import {cleaned} from '../climate/doubts.ts';
import {isTrusted, masked} from '../climate/masked.ts';
import type {Series} from '../climate/series.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {valueAt} from '../records/state.ts';
import type {Desk} from './desk.ts';

export async function trustedReadings(
  {room, state, now}: Desk,
  logger: string,
  fromDays: number,
  toDays: number,
): Promise<Series> {
  const history = state.loggers.get(logger);
  const rules = history === undefined ? undefined : valueAt(history, now).rules;
  const masks = state.masks.filter(mask => mask.logger === logger);
  const read = masked(await room.series(logger, fromDays, toDays), masks);
  return cleaned(read, rules ?? {}, at => isTrusted(masks, Math.round(at * MS_PER_DAY)));
}
