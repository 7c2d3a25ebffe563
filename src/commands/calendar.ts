import {InvalidArgumentError} from 'commander';
import {recordCommand} from './recording.ts';
import {collect} from './words.ts';

export const command = recordCommand({
  arguments: [['<weekday=hours...>', 'opening hours, such as mon=08:00-17:00; a day not named is closed']],
  options: command =>
    command.option('--closed <from/to=why>', 'a closed span of days; may be given several times', collect),
  examples: [
    'calendar mon=08:00-17:00 tue=08:00-17:00 fri=08:00-12:00 --closed "2026-12-24/2026-12-31=holidays"',
  ],
  record: (days, {closed}) => ({
    record: 'calendar',
    open: Object.fromEntries(days.map(openingHours)),
    closed: Array.isArray(closed) ? closed.map(String).map(closedSpan) : undefined,
  }),
});

function openingHours(word: string): [string, string[]] {
  const [day = '', hours] = word.split('=');
  return [day, hours === undefined || hours === '' ? [] : hours.split(',')];
}

function closedSpan(word: string): {from: string; to: string; why?: string} {
  const [, from, to, why] = /^([\d-]{10})(?:\/([\d-]{10}))?(?:=(.*))?$/.exec(word) ?? [];
  if (from === undefined) throw new InvalidArgumentError(`"${word}" is not written from/to=why.`);
  return why === undefined ? {from, to: to ?? from} : {from, to: to ?? from, why};
}
