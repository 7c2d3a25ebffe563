// How long animals of a lot were in each stage: of those followed singly each by itself, of the others by halves.
import {animalsOf} from './animals.ts';
import {type Instant, MS_PER_DAY} from './entry.ts';
import {compareStages, type Stage, type StageCounts, total} from './stage.ts';
import type {Lot} from './state.ts';

export interface StageDuration {
  readonly stage: Stage;
  /** Mean days, each animal's from the middle between two looks to the middle between two looks. */
  readonly days: number;
  /** How far off a single one may be, for the looks stood so far apart. */
  readonly withinDays: number;
  readonly animals: number;
  /** `singly`: animals followed by themselves. `by halves`: from when half had entered the stage to when half had left it. */
  readonly how: 'singly' | 'by halves';
}

/** Stages that were both entered and left while somebody watched, the youngest first. Common practice, no source. */
export function stageDurations(lot: Lot): StageDuration[] {
  const singly = durationsSingly(lot);
  const known = new Set(singly.map(({stage}) => stage));
  const byHalves = durationsByHalves(lot).filter(({stage}) => !known.has(stage));
  return [...singly, ...byHalves].sort((a, b) => compareStages(a.stage, b.stage));
}

interface Passage {
  readonly stage: Stage;
  /** Last seen in the stage before. */
  readonly after: Instant;
  /** First seen in this one. */
  readonly by: Instant;
}

function durationsSingly(lot: Lot): StageDuration[] {
  const found = new Map<Stage, {days: number; within: number}[]>();
  for (const {seen, end} of animalsOf(lot)) {
    const passages = passagesOf(seen);
    const last = seen.at(-1);
    if (end?.how === 'emerged' && last !== undefined)
      passages.push({stage: 'adult', after: last.at, by: end.at});
    for (const [i, passage] of passages.entries()) {
      const next = passages[i + 1];
      if (next === undefined) continue;
      const days = (middle(next) - middle(passage)) / MS_PER_DAY;
      const within = (next.by - next.after + passage.by - passage.after) / 2 / MS_PER_DAY;
      found.set(passage.stage, [...(found.get(passage.stage) ?? []), {days, within}]);
    }
  }
  return [...found].map(([stage, each]) => ({
    stage,
    days: mean(each.map(({days}) => days)),
    withinDays: mean(each.map(({within}) => within)),
    animals: each.length,
    how: 'singly',
  }));
}

function passagesOf(seen: readonly {readonly at: Instant; readonly stage: Stage}[]): Passage[] {
  return seen.flatMap((now, i) => {
    const before = seen[i - 1];
    return before === undefined || before.stage === now.stage
      ? []
      : [{stage: now.stage, after: before.at, by: now.at}];
  });
}

function durationsByHalves(lot: Lot): StageDuration[] {
  const looks = looksOf(lot);
  if (looks.length < 2) return [];
  const stages = [...new Set(looks.flatMap(({stages}) => Object.keys(stages)))].sort(compareStages);
  const left = stages.map(stage => halfBeyond(stage, looks));
  return stages.flatMap((stage, i) => {
    const entered = i === 0 ? undefined : left[i - 1];
    const gone = left[i];
    if (entered === undefined || gone === undefined || gone.at <= entered.at) return [];
    const days = (gone.at - entered.at) / MS_PER_DAY;
    const withinDays = (gone.apart + entered.apart) / 2 / MS_PER_DAY;
    return [{stage, days, withinDays, animals: gone.animals, how: 'by halves'} as const];
  });
}

/** All animals at an instant: those alive by stage, and the adults that had come out by then. */
interface Look {
  readonly at: Instant;
  readonly stages: StageCounts;
  readonly out: number;
}

/** Only counts of all tell shares. An emergence tells how many are out, the others being where they were last seen. */
function looksOf({cohorts, sightings}: Lot): Look[] {
  const [founders, ...later] = cohorts;
  if (founders === undefined || later.some(({how}) => how !== 'found')) return [];
  const looks: Look[] = [{at: founders.at, stages: founders.stages, out: 0}];
  let out = 0;
  for (const one of sightings) {
    if (one.kind === 'count' && one.complete) looks.push({at: one.at, stages: one.stages, out});
    if (one.kind !== 'emergence') continue;
    out += one.count;
    const oldest = oldestFirst(looks.at(-1)!.stages, one.count);
    looks.push({at: one.at, stages: oldest, out});
  }
  return looks;
}

function oldestFirst(stages: StageCounts, count: number): StageCounts {
  const left: Record<Stage, number> = {...stages};
  let going = count;
  for (const stage of Object.keys(left).sort(compareStages).reverse()) {
    const taken = Math.min(left[stage]!, going);
    left[stage]! -= taken;
    going -= taken;
  }
  return left;
}

/** When half of the animals had left a stage behind, by a straight line between two looks. */
function halfBeyond(stage: Stage, looks: readonly Look[]) {
  const share = ({stages, out}: Look) => {
    const beyond = Object.entries(stages).reduce(
      (sum, [name, count]) => sum + (compareStages(name, stage) > 0 ? count : 0),
      out,
    );
    const all = total(stages) + out;
    return all === 0 ? 0 : beyond / all;
  };
  const next = looks.findIndex(look => share(look) >= 0.5);
  if (next <= 0) return undefined;
  const [a, b] = [looks[next - 1]!, looks[next]!];
  const part = (0.5 - share(a)) / (share(b) - share(a));
  return {at: a.at + part * (b.at - a.at), apart: b.at - a.at, animals: total(b.stages) + b.out};
}

function middle({after, by}: Passage): Instant {
  return (after + by) / 2;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
