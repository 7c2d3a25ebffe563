// The handover note in lines.
import {grouped} from '../care/grouped.ts';
import {withAmount} from '../care/titles.ts';
import {compareNaturally} from '../care/walking-order.ts';
import {dateWords} from '../care/when-words.ts';
import {wrap} from '../exchange/pictures/fit.ts';
import {type Line, line} from '../exchange/pictures/line.ts';
import type {Civil} from '../records/civil.ts';
import {type Instant, MS_PER_HOUR} from '../records/entry.ts';
import type {ReadingGap} from './gaps.ts';
import type {HandedTask, Handover} from './handover.ts';

export function handoverLines(note: Handover, civil: Civil, columns: number): Line[] {
  const part = (heading: string, lines: readonly Line[]): Line[] =>
    lines.length === 0 ? [] : [[], line(` ${heading}`, 'heading'), ...lines];
  const entry = (lead: string, text: string, late = false): Line[] =>
    wrap(text, columns - 10).map((words, i) =>
      line(` ${(i === 0 ? lead : '').padEnd(8)} ${words}`, late ? 'late' : 'plain'),
    );
  const task = ({unit, latest, late, ...what}: HandedTask) =>
    entry(unit, `${withAmount(what)}: ${late ? 'late' : `by ${dateWords(latest, civil)}`}`, late);
  const {takenOver, until} = note;
  const last =
    takenOver === null ? '' : `; last taken over by ${takenOver.by} on ${dateWords(takenOver.at, civil)}`;
  return [
    line(` since ${dateWords(note.since, civil)}${last}`),
    ...part('Pressing', note.pressing.flatMap(task)),
    ...part(until === null ? 'Due' : `Due before ${dateWords(until, civil)}`, note.due.flatMap(task)),
    ...part(
      'Amiss',
      note.amiss.flatMap(({what, mend}) => entry('!', `${what}. ${mend}`, true)),
    ),
    ...part(
      'Not read',
      gapsAlike(note.gaps).flatMap(([{logger, from, to, open, words}, units]) =>
        entry(
          logger,
          `${dateWords(from, civil)} to ${open ? 'now' : dateWords(to, civil)}, ${hoursWords(from, to)} without a reading of ${units}; in its place ${words}`,
        ),
      ),
    ),
    ...part(
      'Adults came out',
      note.adults.flatMap(({unit, lot, count}) => entry(unit, `${count} from ${lot}`)),
    ),
    ...part(
      'New',
      note.arrivals.flatMap(({unit, lot, at}) => entry(unit, `${lot}, since ${dateWords(at, civil)}`)),
    ),
    ...part(
      'Written',
      note.notes.flatMap(({at, by, about, text}) =>
        entry(about ?? '', `${text} (${by}, ${dateWords(at, civil)})`),
      ),
    ),
  ];
}

/** A logger that was silent for several units is told of once, with their codes. */
function gapsAlike(gaps: Handover['gaps']): (readonly [ReadingGap, string])[] {
  const alike = grouped(gaps, ({logger, from, to, words}) => `${logger} ${from} ${to} ${words}`);
  return [...alike.values()].map(
    same =>
      [
        same[0]!,
        same
          .map(({unit}) => unit)
          .sort(compareNaturally)
          .join(', '),
      ] as const,
  );
}

function hoursWords(from: Instant, to: Instant): string {
  return `${Math.round((to - from) / MS_PER_HOUR)} h`;
}
