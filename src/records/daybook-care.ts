// Sentences about care, readings, notes and the daybook itself.
import {spoken, whenWritten} from './plain-words.ts';
import type {RoomRecord} from './schema/index.ts';

/** The sentence of a record about care or readings, undefined for any other. */
export function careSentence(record: RoomRecord): string | undefined {
  switch (record.record) {
    case 'care': {
      const seen = Object.entries(record.seen).map(([what, answer]) => `${spoken(what)} ${answered(answer)}`);
      return `${spoken(record.task)} done${place(record)}${seen.length === 0 ? '' : `; ${seen.join(', ')}`}`;
    }
    case 'skip':
      return `${spoken(record.task)} skipped${place(record)}: ${record.why}`;
    case 'acknowledge':
      return `alert ${record.alert} acknowledged: ${record.done}`;
    case 'reading':
      return `logger ${record.logger} reads ${measured([
        [record.temperature, '°C'],
        [record.humidity, '%RH'],
      ])}`;
    case 'extremes': {
      const now = record.now === undefined ? '' : `, now ${record.now} °C`;
      const reset = {true: ', reset', false: ', not reset', undefined: ''}[`${record.reset}`];
      return `logger ${record.logger} held ${record.minimum} to ${record.maximum} °C${now}${reset}`;
    }
    case 'water':
      return `water of ${record.unit}: ${measured([
        [record.temperature, '°C'],
        [record.oxygenMgL, 'mg/l oxygen'],
        [record.ph, 'pH'],
        [record.ammoniaMgL, 'mg/l ammonia'],
        [record.nitriteMgL, 'mg/l nitrite'],
        [record.conductivityUScm, 'µS/cm'],
        [record.hardnessMgL, 'mg/l hardness'],
        [record.levelLitres, 'litres'],
      ])}`;
    case 'mask': {
      const word = record.lift ? 'to be trusted again' : 'not to be trusted';
      return `logger ${record.logger} ${word} from ${whenWritten(record.from)} to ${whenWritten(record.to)}: ${record.why}`;
    }
    case 'note': {
      const weight = record.weightMg === undefined ? undefined : `${record.weightMg} mg`;
      const photo = record.photo === undefined ? undefined : `photo ${record.photo}`;
      const said = [record.text, weight, photo].filter(part => part !== undefined);
      return `note${record.about === undefined ? '' : ` about ${record.about}`}: ${said.join(', ')}`;
    }
    case 'void':
      return `entry ${record.entry} void${record.reason === undefined ? '' : `: ${record.reason}`}`;
    default:
      return undefined;
  }
}

function place({unit, lot}: {unit?: string | undefined; lot?: string | undefined}): string {
  const named = [unit === undefined ? '' : ` in ${unit}`, lot === undefined ? '' : ` for lot ${lot}`];
  return named.join('');
}

function answered(answer: boolean | number | string): string {
  return answer === true ? 'yes' : answer === false ? 'no' : String(answer);
}

function measured(values: readonly (readonly [number | undefined, string])[]): string {
  const parts = values.flatMap(([value, unit]) => {
    if (value === undefined) return [];
    return unit === 'pH' ? `pH ${value}` : `${value} ${unit}`;
  });
  return parts.length === 0 ? 'nothing measured' : parts.join(', ');
}
