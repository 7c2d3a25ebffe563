// What is left to do for a counted lot when nobody in it is alive any more: its animals ask for nothing, it asks to be finished.
import type {Instant} from '../records/entry.ts';
import type {Lot, RoomState, Rule} from '../records/state.ts';
import type {Job} from './job.ts';
import type {Ledger} from './ledger.ts';
import {unitOf} from './occupancy.ts';
import {isLiving} from './stages.ts';
import {type Clock, windowOf} from './window.ts';

/**
 * One job for each finishing task of each empty lot that is not closed. Each is done once.
 * @param rules the room's own before the start values
 */
export function finishJobs(state: RoomState, rules: readonly Rule[], ledger: Ledger, clock: Clock): Job[] {
  const inUse = new Set<string>();
  for (const lot of state.lots.values()) if (isLiving(lot)) inUse.add(lot.stays.at(-1)?.unit ?? '');
  const byTask = new Map(rules.toReversed().map(rule => [rule.task, rule]));
  const wanted = [...byTask.values()].filter(({off}) => !off);
  return [...state.lots.values()]
    .filter(lot => lot.closed === undefined && !isLiving(lot))
    .flatMap(lot =>
      wanted
        .filter(({task}) => isLeft(task, lot, inUse))
        .flatMap(rule => {
          const unit = unitOf(lot, state);
          return unit === undefined ? [] : [finishJob(rule, lot, unit, ledger, clock)];
        }),
    );
}

function isLeft(task: string, lot: Lot, inUse: ReadonlySet<string>): boolean {
  if (task === 'label') return lot.specimens.length > 0;
  return task !== 'clean-out' || !inUse.has(lot.stays.at(-1)?.unit ?? '');
}

function finishJob(rule: Rule, lot: Lot, unit: Job['unit'], ledger: Ledger, clock: Clock): Job {
  const emptied = lot.sightings.at(-1)?.at ?? lot.startedAt;
  const done = ledger.ofLot(rule.task, lot).filter(({at}) => at >= emptied);
  return {
    rule,
    unit,
    lot,
    lots: [lot],
    deeds: done,
    lastDone: (limit: Instant) => done.findLast(({at, skipped}) => skipped === undefined && at <= limit)?.at,
    windowAfter(last) {
      if (last !== undefined) return null;
      const window = windowOf(rule, emptied, lot.code, clock);
      // Nothing has to be waited for: it stands on the list as soon as it may be done.
      return {...window, target: window.earliest};
    },
  };
}
