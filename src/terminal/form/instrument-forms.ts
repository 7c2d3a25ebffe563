// What is read off a thermometer, as a form.
import {instantWords} from '../../exchange/time-words.ts';
import type {Extremes} from '../../records/state.ts';
import {resetIsAsked} from '../../work/extremes.ts';
import type {View} from '../sheet.ts';
import {type Form, given, number, text, type Values} from './field.ts';

/** The two values of a minimum–maximum thermometer, what it shows, and whether it was reset. */
export const extremes: Form = {
  title: logger => `minimum and maximum of ${logger}`,
  fields: (logger, view, values) => {
    const {civil} = view.facts.desk;
    const last = lastOf(logger, view);
    return [
      {name: 'minimum', label: 'coolest °C', required: true},
      {name: 'maximum', label: 'warmest °C', required: true},
      {name: 'now', label: 'shows °C', help: 'what it shows at this moment'},
      {
        name: 'reset',
        label: 'reset',
        choices: ['', 'yes', 'no'],
        help: 'whether it is set to now, after reading',
        ...(whyAsked(logger, values, view) === undefined ? {} : {required: true as const}),
      },
      {
        name: 'from',
        label: 'since',
        help: 'when it was last reset',
        required: true,
        ...(last === undefined ? {} : {preset: civil.iso(last.to).slice(0, 16)}),
      },
      {name: 'to', label: 'read', help: 'empty for now; 08:40, yesterday 17:00, 2026-06-12T08:40'},
    ];
  },
  hints: (logger, view, values) => {
    const {civil, now} = view.facts.desk;
    const last = lastOf(logger, view);
    const why = whyAsked(logger, values, view);
    return [
      ...(last === undefined
        ? []
        : [`read ${instantWords(last.to, civil, now)}: ${last.minimum} to ${last.maximum} °C`]),
      ...(why === undefined ? [] : [`${why}: say whether it is reset now`]),
    ];
  },
  records: (logger, values, {facts: {desk}}) => [
    given({
      record: 'extremes',
      logger,
      minimum: number(values.minimum),
      maximum: number(values.maximum),
      now: number(values.now),
      reset: values.reset === 'yes' ? true : values.reset === 'no' ? false : undefined,
      from: text(values.from),
      to: text(values.to) ?? desk.civil.iso(desk.now),
    }),
  ],
  said: (logger, {minimum, maximum}) => `${logger} held ${minimum} to ${maximum} °C`,
};

function lastOf(logger: string, {facts}: View): Extremes | undefined {
  return facts.desk.state.extremes
    .filter(each => each.logger === logger)
    .sort((a, b) => a.to - b.to)
    .at(-1);
}

function whyAsked(logger: string, {minimum, maximum}: Values, {facts: {desk}}: View): string | undefined {
  const next = {minimum: number(minimum), maximum: number(maximum)};
  return resetIsAsked(desk.state, logger, next, desk.civil);
}
