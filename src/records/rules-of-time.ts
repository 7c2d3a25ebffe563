// Rules about dates within one record: nothing in the future, nothing that ends before it begins.
import {atOf, type Instant, instantOf} from './entry.ts';
import type {Known, Rule} from './rule.ts';

const notInTheFuture: Rule = (_, {entry}, {now, civil}) => {
  const at = atOf(entry);
  if (at <= now) return undefined;
  const what = `${civil.iso(at)} lies in the future; now is ${civil.iso(now)}`;
  return {what, mend: 'Correct the date, or record it once it has happened.'};
};

const writtenDownAfterwards: Rule = (_, {entry}, {now, civil}) => {
  const writtenAt = instantOf(entry.recordedAt);
  if (atOf(entry) <= writtenAt && writtenAt <= now) return undefined;
  const what = `written down at ${entry.recordedAt}, which is not between ${civil.iso(atOf(entry))} and ${civil.iso(now)}`;
  return {what, mend: 'Correct "recordedAt", or leave it out.'};
};

const endsAfterItBegins: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'extremes' && record.record !== 'mask') return undefined;
  const [from, to] = [instantOf(record.from), instantOf(record.to)];
  // A single reading may be masked.
  if (from < to || (from === to && record.record === 'mask')) return undefined;
  return {what: `it ends (${record.to}) before it begins (${record.from})`, mend: 'Correct "from" or "to".'};
};

const looksBeforeItHappened: Rule = (_, {at, entry: {record}}) => {
  if (record.record !== 'emergence' && record.record !== 'parasitoid') return undefined;
  if (record.since === undefined || instantOf(record.since) <= at) return undefined;
  const what = `the last look before (${record.since}) is later than the find (${record.at})`;
  return {what, mend: 'Correct "since", or leave it out: it is then the last check.'};
};

const collectedInThePast: Rule = (_, {entry: {record}}, known) => {
  if (record.record !== 'sample') return undefined;
  const {from, to = from} = record.collected;
  if (beginningOf(to, known) < beginningOf(from, known))
    return {what: `collecting ends (${to}) before it begins (${from})`, mend: 'Correct "collected".'};
  if (beginningOf(to, known) > known.now)
    return {what: `collected ${to}, which lies in the future`, mend: 'Correct "collected".'};
  if (record.at !== undefined && instantOf(record.at) < beginningOf(from, known))
    return {
      what: `accepted ${record.at}, before it was collected (${from})`,
      mend: 'Correct one of the two.',
    };
  return undefined;
};

const identifiedInThePast: Rule = (_, {entry: {record}}, {now, civil}) => {
  if (record.record !== 'identification' || record.on === undefined) return undefined;
  if (record.on <= civil.dayOf(now)) return undefined;
  return {what: `identified on ${record.on}, which lies in the future`, mend: 'Correct "on".'};
};

const closedSpansRunForward: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'calendar') return undefined;
  const wrong = record.closed?.find(({from, to}) => to < from);
  if (wrong === undefined) return undefined;
  return {what: `closed from ${wrong.from} to ${wrong.to}`, mend: 'Give the earlier day first.'};
};

const intervalWithinItsLimits: Rule = (_, {entry: {record}}) => {
  if (record.record !== 'rule') return undefined;
  const {every, earliestDays = 0, latestDays = Number.POSITIVE_INFINITY} = record;
  const target = 'days' in every ? every.days : earliestDays;
  if (earliestDays <= target && target <= latestDays) return undefined;
  const what = `earliest ${earliestDays}, due ${target} and latest ${latestDays} days do not follow each other`;
  return {what, mend: 'Put earliestDays ≤ every ≤ latestDays.'};
};

export const rulesOfTime: readonly Rule[] = [
  notInTheFuture,
  writtenDownAfterwards,
  endsAfterItBegins,
  looksBeforeItHappened,
  collectedInThePast,
  identifiedInThePast,
  closedSpansRunForward,
  intervalWithinItsLimits,
];

/** The instant of ISO text, of a day its first. */
export function beginningOf(dayOrInstant: string, {civil}: Pick<Known, 'civil'>): Instant {
  return dayOrInstant.length === 10 ? civil.at(dayOrInstant, '00:00') : instantOf(dayOrInstant);
}
