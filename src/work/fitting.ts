// Days at temperatures brought together for somebody who compares models: typed, from a file, or from lots.
import {daysTable} from '../exchange/days-table.ts';
import {textIn} from '../exchange/text-file.ts';
import {Refusal} from '../records/refusal.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import type {RateModelSpec} from '../thermal/rate-model.ts';
import {type BestModel, bestModel, type Compared, compared, type FitWishes} from './fit.ts';
import {type FitInput, inputOfLots, inputOfTable, inputTyped} from './fit-input.ts';
import {type FitSaved, fitSaved} from './fit-saved.ts';
import type {Session} from './session.ts';

/** Where the days are taken from: one of these, in this order. */
export interface FitSource {
  readonly lots?: string | undefined;
  readonly file?: string | undefined;
  /** "15=55.6" each. */
  readonly typed: readonly string[];
  readonly stage?: string | undefined;
}

export interface Fitting {
  readonly rows: readonly Observed[];
  readonly compared: readonly Compared[];
  /** What is kept unless another is chosen. */
  readonly best: BestModel;
}

/** All rows, none weighed. */
const PLAIN: FitWishes = {method: 'linear', weighted: false};

/** @throws Refusal where the days cannot be read, or fix no model */
export async function fitting(session: Session, source: FitSource): Promise<Fitting> {
  const {stages, where} = await inputOf(session, source);
  const [first, ...more] = stages;
  if (first === undefined || more.length > 0)
    throw new Refusal(
      `there are days of several stages: ${stages.map(({stage}) => stage).join(', ')}`,
      where,
      'Say which stage.',
    );
  return {
    rows: first.rows,
    compared: compared(first.rows, PLAIN, where),
    best: bestModel(first.rows, PLAIN, where),
  };
}

export interface FittingKept {
  readonly profile: string;
  readonly name: string | undefined;
  readonly kind: RateModelSpec['kind'] | undefined;
  readonly citation: string | undefined;
  readonly sure: boolean;
}

/** @throws Refusal as fitSaved */
export async function keepFitting(
  session: Session,
  source: FitSource,
  {profile, name, kind, citation, sure}: FittingKept,
): Promise<FitSaved> {
  return fitSaved(session, await inputOf(session, source), PLAIN, {
    profile,
    kind,
    source: citation,
    locator: undefined,
    name,
    rank: 'species',
    cv: undefined,
    sure,
  });
}

async function inputOf(session: Session, {lots, file, typed, stage}: FitSource): Promise<FitInput> {
  if (lots !== undefined) return inputOfLots(session, lots.split(/[\s,]+/), stage);
  if (file !== undefined) return inputOfTable(daysTable(textIn(file), file), file, stage);
  return inputTyped(typed, stage);
}
