// From a lot's outlook to what its thread shows.
import type {StageShares} from '../../development/answer.ts';
import type {DayColumn, ThreadData} from '../../exchange/pictures/thread.ts';
import type {Day} from '../../records/civil.ts';
import {type Instant, MS_PER_DAY} from '../../records/entry.ts';
import {inOrder, type StageCounts, total} from '../../records/stage.ts';
import type {Lot} from '../../records/state.ts';
import type {LotOutlook} from '../sheet.ts';

type Forecasted = Extract<LotOutlook, {readonly outlook: unknown}>;

export function threadOf(
  {days, outlook: {lot, forecast}}: Forecasted,
  columns: readonly DayColumn[],
  now: Instant,
): ThreadData {
  const shares = new Map<Day, StageShares>();
  days.forEach((day, i) => {
    const known = forecast.stageShares[i];
    if (known !== undefined) shares.set(day, known.shares);
  });
  return {
    columns,
    nowDays: now / MS_PER_DAY,
    startedDays: lot.startedAt / MS_PER_DAY,
    closedDays: lot.closed === undefined ? undefined : lot.closed.at / MS_PER_DAY,
    shares: columns.map(({day}) => shares.get(day)),
    seen: stagesSeen(lot),
    hidden: lot.material !== undefined,
    perDay: forecast.perDay,
    came: cameOut(lot),
    animals: lot.tally.emerged + total(lot.alive),
    nextCheckDays: forecast.nextCheckDays,
  };
}

/** The stage of most animals, each time somebody told them apart. */
function stagesSeen({cohorts, sightings}: Lot): ThreadData['seen'] {
  const seen = [...cohorts, ...sightings].flatMap(each =>
    'stages' in each ? heaviest(each.stages).map(stage => ({atDays: each.at / MS_PER_DAY, stage})) : [],
  );
  return seen.sort((a, b) => a.atDays - b.atDays);
}

function heaviest(stages: StageCounts): string[] {
  const most = inOrder(stages).reduce<[string, number] | undefined>(
    (best, each) => (best === undefined || each[1] > best[1] ? each : best),
    undefined,
  );
  return most === undefined ? [] : [most[0]];
}

/** Adults, and when they were found. */
export function cameOut({sightings}: Lot): ThreadData['came'] {
  return sightings.flatMap(each =>
    each.kind === 'emergence' ? [{atDays: each.at / MS_PER_DAY, count: each.count}] : [],
  );
}
