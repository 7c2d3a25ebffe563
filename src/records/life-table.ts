// The life table of a lot: how many of its animals entered each stage, and what became of them there.
import {isHidden} from './fold-lots.ts';
import {type Mortality, mortalityOf} from './mortality.ts';
import {compareStages, type Stage, type StageCounts, total} from './stage.ts';
import type {Lot} from './state.ts';

export interface LifeTableRow {
  readonly stage: Stage;
  readonly entered: number;
  /** Died, were eaten, went missing: every loss but the two below. */
  readonly died: number;
  readonly parasitised: number;
  /** Preserved, split off, merged away, given away, escaped: alive when they left. */
  readonly withdrawn: number;
  /** Still in the stage, as last seen. */
  readonly alive: number;
  /** Of the dead and parasitised those whose stage nobody said; they are taken to have been in this one. */
  readonly stageNotSaid: number;
  readonly mortality: Mortality | undefined;
}

export interface LifeTable {
  readonly rows: readonly LifeTableRow[];
  readonly adults: number;
  /** Share that would reach the adult, by the survival of each stage in turn; undefined where a stage tells nothing. */
  readonly survival: number | undefined;
  /** Sum of the k-values. */
  readonly k: number | undefined;
}

/** @returns undefined where animals are hidden, for nobody knows how many entered a stage */
export function lifeTable(lot: Lot): LifeTable | undefined {
  if (isHidden(lot)) return undefined;
  const named = lot.cohorts.flatMap(({stages}) => Object.keys(stages));
  const exits = exitsOf(lot);
  const seen = lot.sightings.flatMap(one => (one.kind === 'count' ? Object.keys(one.stages) : []));
  const all = [...named, ...seen, ...exits.map(({stage}) => stage), ...Object.keys(lot.alive)];
  const fold = foldInstars(all);
  const stages = [...new Set(all.map(fold))].sort(compareStages);

  const rows: LifeTableRow[] = [];
  let waiting = 0;
  for (const stage of stages) {
    const here = exits.filter(exit => fold(exit.stage) === stage);
    const sum = (how: Exit['how']) => here.reduce((n, exit) => n + (exit.how === how ? exit.count : 0), 0);
    const entered =
      waiting +
      within(
        stage,
        lot.cohorts.map(one => one.stages),
        fold,
      );
    const [died, parasitised, withdrawn] = [sum('died'), sum('parasitised'), sum('withdrawn')];
    const alive = within(stage, [lot.alive], fold);
    const stageNotSaid = here.reduce((n, exit) => n + (exit.said ? 0 : exit.count), 0);
    const mortality = mortalityOf(entered, died + parasitised, withdrawn + alive);
    rows.push({stage, entered, died, parasitised, withdrawn, alive, stageNotSaid, mortality});
    waiting = Math.max(0, entered - died - parasitised - withdrawn - alive);
  }
  const known = rows.flatMap(({mortality}) => (mortality === undefined ? [] : [mortality]));
  const tells = known.length === rows.length && rows.length > 0;
  return {
    rows,
    adults: lot.tally.emerged,
    survival: tells ? known.reduce((share, {survived}) => share * survived, 1) : undefined,
    k: tells ? known.reduce((sum, {k}) => sum + k, 0) : undefined,
  };
}

/** Animals that left a lot before they were adult. */
interface Exit {
  readonly stage: Stage;
  readonly count: number;
  readonly how: 'died' | 'parasitised' | 'withdrawn';
  readonly said: boolean;
}

const ALIVE_WHEN_LOST: ReadonlySet<string> = new Set(['given', 'escaped']);

function exitsOf(lot: Lot): Exit[] {
  const exit = (
    how: Exit['how'],
    at: number,
    count: number,
    stage: Stage | undefined,
    first: 0 | -1,
  ): Exit => {
    const guess = stage ?? stagesBefore(lot, at).at(first) ?? 'larva';
    return {stage: guess, count, how, said: stage !== undefined};
  };
  const entryAt = new Map(lot.sightings.map(sighting => [sighting.entry, sighting.at]));
  return lot.entries.flatMap(({id, record}): Exit[] => {
    if (!('lot' in record) || record.lot !== lot.code) return [];
    const at = entryAt.get(id) ?? Number.POSITIVE_INFINITY;
    switch (record.record) {
      case 'loss':
        return [
          exit(ALIVE_WHEN_LOST.has(record.cause) ? 'withdrawn' : 'died', at, record.count, record.stage, 0),
        ];
      case 'voucher':
        return [exit('withdrawn', at, record.count, record.stage, -1)];
      case 'parasitoid':
        return record.hosts > 0 ? [exit('parasitised', at, record.hosts, record.hostStage, -1)] : [];
      case 'split':
        return Object.entries(record.stages).map(([stage, count]) => exit('withdrawn', at, count, stage, 0));
      case 'merge':
        return Object.entries(aliveAtTheEnd(lot)).map(([stage, count]) =>
          exit('withdrawn', at, count, stage, 0),
        );
      default:
        return [];
    }
  });
}

/** What a merge took away, by the stages of the last count; its number is in the sum of the lot. */
function aliveAtTheEnd(lot: Lot): StageCounts {
  const last = stagesBefore(lot, Number.POSITIVE_INFINITY).at(-1) ?? 'larva';
  return {[last]: lot.tally.mergedOut};
}

/** The stages that animals were in when they were last counted before an instant, the youngest first. */
function stagesBefore({sightings, cohorts}: Lot, at: number): Stage[] {
  const counted = sightings.findLast(one => one.kind === 'count' && one.at <= at);
  const stages = counted?.kind === 'count' ? counted.stages : (cohorts[0]?.stages ?? {});
  return Object.keys(stages)
    .filter(stage => stages[stage]! > 0)
    .sort(compareStages);
}

/** Where some said "larva" and others "larva-3", instars are not told apart. */
function foldInstars(stages: readonly Stage[]): (stage: Stage) => Stage {
  const vague = new Set(['larva', 'nymph'].filter(kind => stages.includes(kind)));
  return stage => {
    const kind = stage.split('-')[0]!;
    return vague.has(kind) ? kind : stage;
  };
}

function within(stage: Stage, counts: readonly StageCounts[], fold: (stage: Stage) => Stage): number {
  return counts.reduce((sum, one) => {
    const own = Object.fromEntries(Object.entries(one).filter(([name]) => fold(name) === stage));
    return sum + total(own);
  }, 0);
}
