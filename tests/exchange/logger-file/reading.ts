// Reads logger files written as strings, and shows what came of them shortly.
import {civilIn} from '../../../src/exchange/civil.ts';
import {
  type LoggerFile,
  type LoggerFileWishes,
  readLoggerFile,
} from '../../../src/exchange/logger-file/logger-file.ts';

export function read(text: string | Uint8Array, wishes: Partial<LoggerFileWishes> = {}): LoggerFile {
  const bytes = typeof text === 'string' ? Buffer.from(text) : text;
  return readLoggerFile([bytes], 'log.csv', {zone: 'UTC', ...wishes});
}

/** "2026-05-30T09:00 21.4 62" a reading, in the zone of the file; days of extremes likewise. */
export function shown(file: LoggerFile): string[] {
  if (file.kind === 'extremes')
    return file.days.map(({day, minimum, maximum}) => `${day} ${minimum} ${maximum}`);
  const civil = civilIn(file.zone);
  return Array.from(file.at, (at, i) => {
    const humidity = file.rhPercent[i]!;
    const time = civil.iso(at).slice(0, -6).replace(/:00$/, '');
    return `${time} ${file.temperature[i]}${Number.isNaN(humidity) ? '' : ` ${humidity}`}`;
  });
}

export function readShown(text: string | Uint8Array, wishes: Partial<LoggerFileWishes> = {}): string[] {
  return shown(read(text, wishes));
}
