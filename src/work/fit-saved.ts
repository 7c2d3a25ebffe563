// A fitted model kept as the rate of a stage, in a profile of the room, with the person's source.
import {type Doubt, profileDoubts} from '../records/profile-doubts.ts';
import {Refusal} from '../records/refusal.ts';
import {type Profile, parseRecord, type TaxonProfile} from '../records/schema/index.ts';
import {compareStages} from '../records/stage.ts';
import type {Observed} from '../thermal/fit/observed.ts';
import {landmarksOf, type RateModelKind, type RateModelSpec} from '../thermal/rate-model.ts';
import {openDesk} from './desk.ts';
import {bestModel, curveFit, curveKinds, type FitWishes, heldLine, rowsWithin} from './fit.ts';
import type {FitInput} from './fit-input.ts';
import {profileOf} from './profiles.ts';
import {record} from './record.ts';
import type {Session} from './session.ts';

export interface SaveWishes {
  readonly profile: string;
  /** Default: the best supported that the rows fix. */
  readonly kind: RateModelKind | undefined;
  readonly source: string | undefined;
  readonly locator: string | undefined;
  /** Of a profile that is not there yet. */
  readonly name: string | undefined;
  readonly rank: 'species' | 'genus';
  readonly cv: number | undefined;
  /** What looks wrong was looked at again, and is right. */
  readonly sure: boolean;
}

/** As `teneral fit --save` answers. */
export interface FitSaved {
  readonly profile: string;
  readonly stages: readonly {readonly stage: string; readonly rate: RateModelSpec}[];
  /** What looks wrong in the profile as it is now. */
  readonly doubts: readonly Doubt[];
}

/** Beyond the warmest row a table ends so far off. Common practice, no source. */
const BEYOND_TABLE_C = 4;

/** @throws Refusal where stage, source or name is not said, or the rows make no model */
export async function fitSaved(
  session: Session,
  input: FitInput,
  wishes: FitWishes,
  save: SaveWishes,
): Promise<FitSaved> {
  const {state} = await openDesk(session);
  const before = await profileOf(save.profile, state);
  if (before !== undefined && ('variation' in before || 'undated' in before))
    throw new Refusal(
      `${save.profile} is a group of unlike members, which has no rates of its own`,
      '--save',
      'Give the species a profile of its own, under another code.',
    );
  const citation = save.source ?? (input.lots === undefined ? undefined : 'Lots of this room');
  if (citation === undefined)
    throw new Refusal('where the days come from is not said', '--source', 'Cite it: --source "Smith 2019".');
  const stages = input.stages.map(({stage, rows}) => {
    if (stage === undefined)
      throw new Refusal(
        'which stage the days are of is not said',
        '--stage',
        'Name it: --stage pupa, or add a column stage to the table.',
      );
    const within = rowsWithin(rows, wishes, input.where);
    return {stage, rows: within, rate: modelOf(within, wishes, save.kind, input.where)};
  });
  const profile = profileWith(before, stages, {...save, source: citation}, input);
  await record(session, [profile]);
  const parsed = parseRecord(profile, '');
  return {
    profile: save.profile,
    stages: stages.map(({stage, rate}) => ({stage, rate})),
    doubts: parsed.record === 'profile' ? profileDoubts(parsed) : [],
  };
}

/** The model asked for, else the one to keep. */
function modelOf(
  rows: readonly Observed[],
  wishes: FitWishes,
  kind: RateModelKind | undefined,
  where: string,
): RateModelSpec {
  if (kind === 'table') return tableThrough(rows, wishes, where);
  if (kind === 'degree-day') return heldLine(rows, wishes, where).model;
  const curve = curveKinds.find(each => each === kind);
  return curve === undefined
    ? bestModel(rows, wishes, where).model
    : curveFit(curve, rows, wishes, where).model;
}

/** The rows themselves, beginning at the threshold of their straight part. */
function tableThrough(rows: readonly Observed[], wishes: FitWishes, where: string): RateModelSpec {
  const {lowerC} = landmarksOf(heldLine(rows, wishes, where).model);
  const coldest = rows[0]!.temperature;
  return {
    kind: 'table',
    points: rows.map(({temperature, days}) => ({temperature, days})),
    lower: Math.min(lowerC ?? coldest, coldest - 1),
    upper: rows.at(-1)!.temperature + BEYOND_TABLE_C,
  };
}

function profileWith(
  before: TaxonProfile | undefined,
  fitted: readonly {
    readonly stage: string;
    readonly rows: readonly Observed[];
    readonly rate: RateModelSpec;
  }[],
  {profile, name, rank, cv, source, locator, sure}: SaveWishes & {readonly source: string},
  {lots}: FitInput,
): unknown {
  if (before === undefined && name === undefined)
    throw new Refusal(
      `there is no profile "${profile}" yet, and what it is of is not said`,
      '--name',
      'Name it: --name "Pieris brassicae".',
    );
  const id = freeId(before);
  const names = new Set(fitted.map(({stage}) => stage));
  const kept = (before?.stages ?? []).filter(({stage}) => !names.has(stage));
  const added = fitted.map(({stage, rate}) => {
    const old = before?.stages.find(each => each.stage === stage);
    return {
      stage,
      rate,
      cv: cv ?? old?.cv,
      family: old?.family,
      source: id,
      ...(cv === undefined && old !== undefined ? {spreadSource: old.spreadSource ?? old.source} : {}),
    };
  });
  const stages = [...kept, ...added].sort((a, b) => compareStages(a.stage, b.stage));
  const {
    key: _key,
    recordedAt: _recordedAt,
    at: _at,
    sure: _sure,
    replaces: _replaces,
    ...rest
  } = before ?? {
    record: 'profile' as const,
    profile,
    name,
    rank,
    sources: [],
  };
  return {
    ...rest,
    ...(sure ? {sure} : {}),
    stages,
    published: [
      ...(before?.published ?? []).filter(({from, to}) => from !== to || !names.has(from)),
      ...fitted
        .filter(({rate}) => rate.kind !== 'table')
        .map(({stage, rows}) => ({from: stage, to: stage, points: rows.map(pointOf), source: id})),
    ],
    sources: [
      ...rest.sources,
      {
        id,
        citation: source,
        ...(locator === undefined ? {} : {locator}),
        provenance: lots === undefined ? 'seen' : 'computed',
        note: `Rate models fitted to mean days at temperatures: ${fitted.map(({stage, rate, rows}) => `${stage} ${rate.kind}, ${rows.length} rows`).join('; ')}.${lots === undefined ? '' : ` Lots ${[...new Set(lots.durations.map(({lot}) => lot))].join(', ')}, at the mean temperatures they lived at.`}`,
      },
    ],
  };
}

function pointOf({temperature, days, sd, n}: Observed) {
  return {temperature, days, ...(sd === undefined ? {} : {sd}), ...(n === undefined ? {} : {n})};
}

function freeId(before: Profile | undefined): string {
  const taken = new Set(before?.sources.map(({id}) => id));
  let id = 'fit-1';
  for (let n = 2; taken.has(id); n++) id = `fit-${n}`;
  return id;
}
