// Whether a task is done for a lot or for the unit it lives in, and which lots ask for it at all.
import type {Lot, Rule, Unit} from '../records/state.ts';
import {isWantedWhereHeld} from './cold.ts';
import {hasFeeders} from './stages.ts';
import type {UnitType} from './start-rule.ts';
import {finishTasks} from './start-rules-finish.ts';

const forLots = new Set(['feed', 'give-water', 'look', 'inspect', 'move-pupae']);
const forUnits = new Set(['clean', 'change-water', 'top-up', 'moisten', 'check-air', 'check-cold']);
const inWater = new Set(['change-water', 'top-up', 'check-air']);
const finishing = new Set<string>(finishTasks);

/** A task of the room's own is one of the lot where its rule names animals, else one of the unit. */
export function isForLot({task, when, for: {lot, profile, group, stages}}: Rule): boolean {
  if (when !== undefined) return true;
  if (forLots.has(task)) return true;
  if (forUnits.has(task)) return false;
  return lot !== undefined || profile !== undefined || group !== undefined || stages !== undefined;
}

/** A task that ends a lot. */
export function isFinishing({task}: Rule): boolean {
  return finishing.has(task);
}

/** What the cold leaves. Food, water and clearing away are for those that eat; water is changed in aquaria only; prepupae are left alone while others still eat. */
export function isWanted(rule: Rule, lot: Lot, unit: Unit): boolean {
  const {task, when} = rule;
  const {type} = unit;
  if (!isWantedWhereHeld(rule, unit)) return false;
  if (when !== undefined) return true;
  if (inWater.has(task) && type !== 'aquarium') return false;
  if (task === 'feed' || task === 'give-water') return hasFeeders(lot);
  if (task === 'clean' && type !== 'emergence-box') return hasFeeders(lot);
  if (task === 'move-pupae' && type === 'cage') return !hasFeeders(lot);
  return true;
}

/** Wanted as soon as there is somebody to do it for, not one interval later. */
export function isWantedAtOnce({task}: Rule, type: UnitType): boolean {
  return task === 'feed' || task === 'give-water' || (task === 'move-pupae' && type === 'aquarium');
}
