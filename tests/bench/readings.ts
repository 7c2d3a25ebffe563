// A million readings read from a file and integrated to degree-days, against a script that does it the plain way.
import {mkdtempSync, readFileSync, rmSync, writeFileSync} from 'node:fs';
import {tmpdir} from 'node:os';
import {join} from 'node:path';
import {chunksOf} from '../../src/exchange/logger-file/chunks.ts';
import {readLoggerFile} from '../../src/exchange/logger-file/logger-file.ts';
import {degreeDaysOfFile} from '../../src/work/degree-days.ts';
import {interleaved} from './rounds.ts';

const READINGS = 1_000_000;
const LOWER = 10;
const UPPER = 30;
const MAX_GAP_HOURS = 3;

export function benchReadings(): string {
  const folder = mkdtempSync(join(tmpdir(), 'teneral-bench-'));
  try {
    const path = join(folder, 'logger.csv');
    writeFileSync(path, loggerText());
    let ours = 0;
    let plain = 0;
    const {teneral, script} = interleaved(
      {
        teneral: () => {
          ours = throughTeneral(path);
        },
        script: () => {
          plain = throughPlainScript(path);
        },
      },
      5,
    );
    if (!(Math.abs(ours / plain - 1) < 1e-9))
      throw new Error(`the sums differ: ${ours} and ${plain} degree-days`);
    const ratio = (a: number, b: number) => (b / a).toFixed(1);
    return [
      `${READINGS.toLocaleString('en')} readings, from the file to degree-days`,
      `  teneral ${teneral.medianMs.toFixed(0)} ms (the first time ${teneral.firstMs.toFixed(0)} ms)`,
      `  a script that splits lines and parses dates ${script.medianMs.toFixed(0)} ms (the first time ${script.firstMs.toFixed(0)} ms)`,
      `  ${ratio(teneral.medianMs, script.medianMs)} times as fast; the first time ${ratio(teneral.firstMs, script.firstMs)} times`,
    ].join('\n');
  } finally {
    rmSync(folder, {recursive: true});
  }
}

/** Nine and a half years at a reading every five minutes. */
export function loggerText(): string {
  const start = Date.parse('2016-01-01T00:00Z');
  const rows = Array.from({length: READINGS}, (_, i) => {
    const time = new Date(start + i * 300_000).toISOString().slice(0, 19);
    const hours = i / 12;
    const temperature = 18 + 9 * Math.sin(hours / 3.82) + 3 * Math.sin(hours / 170);
    return `${time},${temperature.toFixed(2)},${(60 - temperature / 2).toFixed(1)}`;
  });
  return `time,temperature,humidity\n${rows.join('\n')}\n`;
}

function throughTeneral(path: string): number {
  const file = readLoggerFile(chunksOf(path), path, {zone: 'UTC'});
  return degreeDaysOfFile(file, {
    lower: LOWER,
    upper: UPPER,
    cutoff: 'horizontal',
    unit: 'C',
    maxGapHours: MAX_GAP_HOURS,
  }).total;
}

/** As one would write it in a minute: rows of objects, dates by Date.parse, lines cut at the thresholds. */
function throughPlainScript(path: string): number {
  const rows = readFileSync(path, 'utf8')
    .split('\n')
    .slice(1)
    .filter(line => line !== '')
    .map(line => line.split(','))
    .map(([time, temperature]) => ({at: Date.parse(`${time}Z`), temperature: Number(temperature)}));
  const effective = (temperature: number) => Math.min(Math.max(temperature, LOWER), UPPER) - LOWER;
  let total = 0;
  for (let i = 1; i < rows.length; i++) {
    const {at: start, temperature: a} = rows[i - 1]!;
    const {at: end, temperature: b} = rows[i]!;
    const hours = (end - start) / 3_600_000;
    if (hours > MAX_GAP_HOURS) continue;
    const cuts = [LOWER, UPPER].map(level => (level - a) / (b - a)).filter(cut => cut > 0 && cut < 1);
    const parts = [0, ...cuts.sort((x, y) => x - y), 1];
    for (let k = 1; k < parts.length; k++) {
      const middle = a + ((b - a) * (parts[k - 1]! + parts[k]!)) / 2;
      total += (effective(middle) * (parts[k]! - parts[k - 1]!) * hours) / 24;
    }
  }
  return total;
}
