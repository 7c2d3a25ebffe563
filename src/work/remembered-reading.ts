// How a logger's files are read: what a person says now, what was said once, and what files settled.
import type {LoggerFile, LoggerFileWishes} from '../exchange/logger-file/logger-file.ts';
import type {TemperatureUnit} from '../exchange/temperature-unit.ts';
import {Refusal} from '../records/refusal.ts';
import type {Logger} from '../records/state.ts';

/** What a person may say of a file. */
export interface ReadingWishes {
  readonly columns?: string | undefined;
  readonly format?: string | undefined;
  /** Zone of instants without an offset; default: the room's. */
  readonly zone?: string | undefined;
  readonly sensor?: string | undefined;
  readonly unit?: TemperatureUnit | undefined;
  /** How far the logger's clock is ahead, ms; never remembered, because clocks are set right. */
  readonly clockMs?: number | undefined;
  /** Leave out of account what is remembered. */
  readonly afresh?: boolean | undefined;
}

type Remembered = NonNullable<Logger['reads']>;

/** What is said now goes before what is remembered; a file's own word on order and unit before what is usual. */
export function fileWishes(
  wishes: ReadingWishes,
  reads: Remembered | undefined,
  roomZone: string,
): LoggerFileWishes {
  const kept: Remembered = wishes.afresh === true ? {} : (reads ?? {});
  return {
    columns: wishes.columns ?? kept.columns,
    format: wishes.format ?? kept.format,
    zone: wishes.zone ?? kept.zone ?? roomZone,
    sensor: wishes.sensor ?? kept.sensor,
    unit: wishes.unit,
    clockMs: wishes.clockMs,
    usual: {order: kept.order, unit: kept.unit},
  };
}

/**
 * What to remember after a file was read; undefined where that is remembered already. The common case (year first,
 * °C, nothing said) needs no remembering.
 */
export function toRemember(
  wishes: ReadingWishes,
  reads: Remembered | undefined,
  files: readonly LoggerFile[],
): Remembered | undefined {
  const before: Remembered = wishes.afresh === true ? {} : (reads ?? {});
  const layout = files.at(-1)?.layout;
  const order = layout?.dates.kind === 'numeric' ? layout.dates.order : undefined;
  const isUsual = (before.order ?? 'ymd') === (order ?? 'ymd');
  const said = {
    columns: wishes.columns ?? before.columns,
    format: wishes.format ?? before.format,
    zone: wishes.zone ?? before.zone,
    sensor: wishes.sensor ?? before.sensor,
    order: isUsual ? before.order : order,
    unit: layout === undefined || layout.unit === (before.unit ?? 'C') ? before.unit : layout.unit,
  };
  const now = Object.fromEntries(Object.entries(said).filter(([, value]) => value !== undefined));
  return JSON.stringify(now) === JSON.stringify(ordered(reads)) ? undefined : now;
}

/** The parts of what is remembered that had a say, in words: "columns time=1,temperature=4". */
export function rememberedWords(wishes: ReadingWishes, reads: Remembered | undefined): string[] {
  if (wishes.afresh === true || reads === undefined) return [];
  return (['columns', 'format', 'zone', 'sensor'] as const).flatMap(part =>
    wishes[part] === undefined && reads[part] !== undefined ? [`${part} ${reads[part]}`] : [],
  );
}

/** A refusal over something that nobody said this time names where it comes from. */
export function blaming(refusal: Refusal, remembered: readonly string[], logger: string): Refusal {
  if (remembered.length === 0) return refusal;
  const from = `Remembered for ${logger}: ${remembered.join(', ')}; --afresh reads the file without that.`;
  return new Refusal(refusal.what, refusal.where, `${refusal.mend} ${from}`);
}

/** In the order in which toRemember writes it. */
function ordered(reads: Remembered = {}): Remembered {
  const {columns, format, zone, sensor, order, unit} = reads;
  const parts = {columns, format, zone, sensor, order, unit};
  return Object.fromEntries(Object.entries(parts).filter(([, value]) => value !== undefined));
}
