// A text that was asked for came: why something was skipped, a reading, a remark, a temperature, a day.

import {HOW_MUCH, howMuchText, readHowMuch} from '../../exchange/how-much.ts';
import type {Rule} from '../../records/state.ts';
import {livingIn} from '../../work/unit-course.ts';
import {heldAt, plannedBy} from '../answer/asks.ts';
import type {Sheet, Step, View} from '../sheet.ts';
import type {Purpose} from './asking.ts';

/** What any sheet does with a text for the daybook. */
export function recorded(purpose: Purpose, text: string, view: View): Step<Sheet> {
  switch (purpose.for) {
    case 'skip':
      return {effects: [{do: 'skip', ids: purpose.ids, why: text}]};
    case 'acknowledge':
      return effect(
        {record: 'acknowledge', alert: purpose.alert, done: text},
        `seen to: ${text}`,
        purpose.alert,
      );
    case 'note':
      return effect(
        {record: 'note', about: purpose.about, text},
        `noted about ${purpose.about}`,
        purpose.about,
      );
    case 'reading':
      return reading(purpose.logger, text);
    case 'offset':
      return offset(purpose.unit, text, view);
    case 'import':
      return {effects: [{do: 'import', logger: purpose.logger, path: text}]};
    case 'mask': {
      const {logger, from, to, lift} = purpose;
      const said = lift ? `trusted again: ${text}` : `masked: ${text}`;
      return effect({record: 'mask', logger, from, to, why: text, lift}, said, `${logger} ${from}`);
    }
    case 'labels':
      return {effects: [{do: 'labels', of: purpose.of, code: purpose.code, file: text}]};
    case 'export':
      return {effects: [{do: 'export', to: text}]};
    case 'interval':
      return interval(purpose.rule, text);
    case 'amount':
      return amount(purpose.rule, text);
    case 'hold':
      return heldAt(purpose.lot, text);
    case 'plan':
      return plannedBy(purpose.lot, text, view);
    case 'field':
      return {};
  }
}

/** "21.4 62": °C, then perhaps % relative humidity. */
function reading(logger: string, text: string): Step<Sheet> {
  const [temperature, humidity, ...rest] = text
    .split(/\s+/)
    .map(word => Number(word.replace(',', '.').replace(/(°?C|%)$/i, '')));
  const isNumber = (value: number | undefined) => value === undefined || Number.isFinite(value);
  if (temperature === undefined || rest.length > 0 || !isNumber(temperature) || !isNumber(humidity))
    return {say: `"${text}" is no reading. Write °C, and perhaps % humidity after a blank: 21.4 62.`};
  const humid = humidity === undefined ? {} : {humidity};
  const said = `${logger} reads ${temperature} °C${humidity === undefined ? '' : `, ${humidity} %`}`;
  return effect({record: 'reading', logger, temperature, ...humid}, said, logger);
}

/** It holds for all who live there now, from when the first of them came. */
function offset(unit: string, text: string, {facts: {desk}}: View): Step<Sheet> {
  const offsetC = Number(text.replace(',', '.').replace(/\s*°?C$/i, ''));
  if (!Number.isFinite(offsetC)) return {say: `"${text}" is no difference. Write °C: -1.5.`};
  const came = livingIn(desk, unit).flatMap(({stays}) => stays.at(-1)?.from ?? []);
  const at = came.length === 0 ? {} : {at: desk.civil.iso(Math.min(...came))};
  return effect({record: 'unit', code: unit, offsetC, ...at}, `${unit} ${offsetC} °C from its logger`, unit);
}

function effect(record: Readonly<Record<string, unknown>>, said: string, about: string): Step<Sheet> {
  return {effects: [{do: 'record', records: [record], said, about: [about]}]};
}

/** "24 dd above 8": degree-days above a threshold in °C. */
const WARMTH = /^(\S+?)\s*(?:dd|degree-days?)\s+above\s+(-?[\d.,]+)\s*(?:°?C)?(?=\s|$)(.*)$/i;

/** "2", "2 1 3", "24 dd above 8 1 4": days or warmth, then perhaps the soonest and the latest in days. */
function interval(rule: Rule, text: string): Step<Sheet> {
  const warmth = WARMTH.exec(text.trim());
  const numbers = (warmth === null ? text : `${warmth[1]} ${warmth[3]}`).trim().split(/\s+/).map(numberOf);
  const [often = 0, earliestDays, latestDays, ...rest] = numbers;
  const lower = warmth === null ? 0 : numberOf(warmth[2]!);
  const isDays = (value: number | undefined) => value === undefined || (Number.isFinite(value) && value >= 0);
  if (
    !(often > 0) ||
    !Number.isFinite(lower) ||
    rest.length > 0 ||
    !isDays(earliestDays) ||
    !isDays(latestDays)
  )
    return {
      say: `"${text}" is no interval. Write days, or warmth, and perhaps the soonest and the latest day: 2 1 3; 24 dd above 8 1 4.`,
    };
  const limits = {
    earliestDays: earliestDays ?? rule.earliestDays,
    latestDays: latestDays ?? rule.latestDays,
  };
  const [every, said] =
    warmth === null
      ? [{days: often}, `${often} days`]
      : [{degreeDays: often, lower}, `${often} degree-days above ${lower} °C`];
  return effect({...rule, record: 'rule', every, ...limits}, `${rule.code} every ${said}`, rule.code);
}

/** "46 aphids each a day", "25 % of the water", "none". */
function amount({amount: _, ...rule}: Rule, text: string): Step<Sheet> {
  const read = readHowMuch(text);
  if (read === undefined) return {say: `"${text}" is no amount. ${HOW_MUCH}.`};
  const said = read === null ? 'says nothing of how much' : howMuchText(read);
  return effect({...rule, record: 'rule', amount: read ?? undefined}, `${rule.code}: ${said}`, rule.code);
}

function numberOf(word: string): number {
  return Number(word.replace(',', '.'));
}
