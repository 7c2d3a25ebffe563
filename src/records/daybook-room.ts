// Sentences about the room's furniture: units, loggers, samples, rules, profiles, hours, people, settings.
import {whenWritten} from './plain-words.ts';
import type {RecordOf, RoomRecord} from './schema/index.ts';

/** The sentence of a record about what stands and holds in a room; of any other, what kind it is. */
export function roomSentence(record: RoomRecord): string {
  switch (record.record) {
    case 'unit':
      return unitSentence(record);
    case 'logger':
      return loggerSentence(record);
    case 'sample':
      return sampleSentence(record);
    case 'subsample': {
      const {code, of, part, share} = record;
      const what = [part, share === undefined ? undefined : `${Math.round(share * 100)} %`];
      const said = what.filter(one => one !== undefined).join(', ');
      return `part ${code} taken of sample ${of}${said === '' ? '' : `: ${said}`}`;
    }
    case 'bycatch': {
      const {count, what, alive, done, sample} = record;
      const state = alive === undefined ? '' : alive ? ', alive' : ', dead';
      return `by-catch in sample ${sample}: ${count} ${what}${state}, ${done}`;
    }
    case 'sorting': {
      const how = {unsorted: 'not sorted yet', partly: 'sorted in part', sorted: 'sorted'}[record.state];
      return `sample ${record.sample} ${how}${record.note === undefined ? '' : `: ${record.note}`}`;
    }
    case 'rule': {
      const {every, task, code, off} = record;
      const often = 'days' in every ? `every ${every.days} days` : `every ${every.degreeDays} degree-days`;
      return `rule ${code}: ${task} ${off ? 'no longer' : often}`;
    }
    case 'profile':
      return `profile ${record.profile}: ${record.name}`;
    case 'calendar':
      return 'opening hours and closed days set';
    case 'person':
      return `works in the room: ${record.name}`;
    case 'setting':
      return settingSentence(record);
    default:
      return `${record.record} recorded`;
  }
}

function settingSentence({finishedLots, midsummer}: RecordOf<'setting'>): string {
  const said = [
    ...(finishedLots === undefined
      ? []
      : [`forecasts begin ${finishedLots === 'used' ? 'from what finished lots taught' : 'as published'}`]),
    ...(midsummer === undefined ? [] : [`midsummer is on ${midsummer}`]),
  ];
  return `set for the room: ${said.length === 0 ? 'nothing' : said.join('; ')}`;
}

const kinds = {
  automatic: 'automatic logger',
  extremes: 'minimum–maximum thermometer',
  hand: 'read by hand',
} as const;

function loggerSentence({code, kind, name, reads, rules}: RecordOf<'logger'>): string {
  const what = kind === undefined ? ' changed' : ` (${kinds[kind]})`;
  const doubted = Object.entries(rules ?? {}).map(([rule, limit]) => `, rule ${rule} ${limit}`);
  const read = Object.entries(reads ?? {}).map(([how, value]) => `${how} ${value}`);
  const files = read.length === 0 ? '' : `, its files read with ${read.join(', ')}`;
  return `logger ${code}${what}${name === undefined ? '' : `, ${name}`}${files}${doubted.join('')}`;
}

function unitSentence({code, type, place, logger, setPoints}: RecordOf<'unit'>): string {
  const course =
    setPoints === undefined
      ? ''
      : 'constant' in setPoints
        ? `, held at ${setPoints.constant} °C`
        : 'ambient' in setPoints
          ? ', at the temperature around it'
          : `, ${setPoints.day} °C by day and ${setPoints.night} °C by night`;
  const read = logger === undefined ? '' : `, read by ${logger}`;
  const what = type === undefined ? ' changed' : ` (${type.replace('-', ' ')})`;
  return `unit ${code}${what}${place === undefined ? '' : ` at ${place}`}${course}${read}`;
}

function sampleSentence({code, method, collected, place, host, hostPart}: RecordOf<'sample'>): string {
  const {from, to} = collected;
  const when =
    to === undefined || to === from ? whenWritten(from) : `${whenWritten(from)} to ${whenWritten(to)}`;
  const where = [place?.locality, place?.region, place?.country].filter(part => part !== undefined);
  const on = [host, hostPart].filter(part => part !== undefined).join(', ');
  const at = where.length === 0 ? '' : `, ${where.join(', ')}`;
  return `sample ${code} collected ${when} (${method.replace('-', ' ')})${at}${on === '' ? '' : `, on ${on}`}`;
}
