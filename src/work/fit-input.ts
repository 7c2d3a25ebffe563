// What a fit is made of: days at temperatures, stage by stage, from a table, typed, or from lots of the room.
import type {DaysTable} from '../exchange/days-table.ts';
import {readNumber} from '../exchange/logger-file/written-number.ts';
import {Refusal} from '../records/refusal.ts';
import {compareStages} from '../records/stage.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import {type LotDuration, lotDurations} from './lot-durations.ts';
import type {Session} from './session.ts';

export interface FitInput {
  /** How it is named to a person. */
  readonly where: string;
  readonly stages: readonly {
    /** Undefined where nobody said which. */
    readonly stage: string | undefined;
    readonly rows: readonly Observed[];
  }[];
  /** Temperatures at which a table gives no days. */
  readonly withoutDays: readonly number[];
  /** What lots gave, and why some gave nothing. */
  readonly lots?: {readonly durations: readonly LotDuration[]; readonly passedOver: readonly string[]};
}

/** @param stage where the table does not tell stages apart, what it is of; else the one that counts */
export function inputOfTable(table: DaysTable, where: string, stage: string | undefined): FitInput {
  const told = table.rows.some(row => row.stage !== undefined);
  const names = told ? [...new Set(table.rows.map(row => row.stage))] : [stage];
  const stages = names
    .filter(name => !told || stage === undefined || name === stage)
    .map(name => ({stage: name, rows: told ? table.rows.filter(row => row.stage === name) : table.rows}));
  if (stages.length === 0)
    throw new Refusal(`the table has no stage "${stage}"`, where, `Its stages are ${names.join(', ')}.`);
  return {where, stages, withoutDays: table.withoutDays};
}

/** "15=55.6": the temperature, then the days. @throws Refusal where a word is none */
export function inputTyped(words: readonly string[], stage: string | undefined): FitInput {
  const rows = words.map(word => {
    const [temperature, days, ...rest] = word.split('=').map(part => readNumber(part.trim()));
    if (temperature === undefined || days === undefined || rest.length > 0)
      throw new Refusal(`"${word}" is no temperature with days`, 'typed days', 'Write it like 15=55.6.');
    if (!(days > 0) || temperature < -10 || temperature > 50)
      throw new Refusal(
        `"${word}" is no development`,
        'typed days',
        'Give °C, then days above 0, like 15=55.6.',
      );
    return {temperature, days};
  });
  return {where: 'typed days', stages: [{stage, rows}], withoutDays: []};
}

/** @throws Refusal where the lots give no days */
export async function inputOfLots(
  session: Session,
  words: readonly string[],
  stage: string | undefined,
): Promise<FitInput> {
  const {durations, passedOver} = await lotDurations(session, words);
  const wanted = durations.filter(each => stage === undefined || each.stage === stage);
  const names = [...new Set(wanted.map(each => each.stage))].sort(compareStages);
  if (names.length === 0)
    throw new Refusal(
      `these lots tell the days of no stage${stage === undefined ? '' : ` ${stage}`} from beginning to end`,
      'lots',
      passedOver[0] === undefined
        ? 'A stage needs looks before it begins and after it ends.'
        : `${passedOver[0]}.`,
    );
  return {
    where: 'lots',
    stages: names.map(name => ({stage: name, rows: wanted.filter(each => each.stage === name)})),
    withoutDays: [],
    lots: {durations: wanted, passedOver},
  };
}
