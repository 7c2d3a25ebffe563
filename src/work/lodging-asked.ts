// Before animals are put into a unit that would harm them, whoever does it is asked whether they are sure. What only wants
// to be seen to, such as a unit that was not cleaned, is said afterwards.
import {civil as civilOf} from '../exchange/civil.ts';
import {inZone} from '../exchange/instants.ts';
import {instantOf, isApplied} from '../records/entry.ts';
import {fold} from '../records/fold.ts';
import {parseRecord, type RoomRecord} from '../records/schema/index.ts';
import {total} from '../records/stage.ts';
import {type Lot, type RoomState, type Unit, valueAt} from '../records/state.ts';
import {put} from '../records/stock.ts';
import type {Room} from '../room/room.ts';
import {nowOf} from './desk.ts';
import {Doubt} from './doubts.ts';
import {lodgingFaults, type Subject} from './lodging.ts';
import {needsOptions} from './lodging-words.ts';
import type {Session} from './session.ts';

/**
 * For `record`: refuses, on the room as it stood when they were put there.
 * @throws Doubt naming all that speaks against the unit, where anything of it would harm them
 */
export function unlessUnsuited(session: Session, drafts: readonly unknown[]): (room: Room) => Promise<void> {
  return async room => {
    for (const draft of drafts) await askAbout(draft, room, session);
  };
}

async function askAbout(draft: unknown, room: Room, session: Session): Promise<void> {
  if (!isPutting(draft)) return;
  const civil = civilOf(room.zone);
  const record = inZone(parseRecord(draft, ''), civil);
  const now = nowOf(session, civil);
  const at = 'at' in record && record.at !== undefined ? Math.min(now, instantOf(record.at)) : now;
  const state = fold(room.entries, at);
  const {key, sure} = record;
  if (sure === true || isApplied(key, state.entries)) return;
  const put = putting(record, state);
  if (put === undefined) return;
  const faults = await lodgingFaults({session, room, civil, now: at, state}, put.who, put.unit);
  if (!faults.some(({harms}) => harms)) return;
  throw new Doubt(
    `${put.unit.code} does not suit ${put.who.code}: ${faults.map(({what}) => what).join('; ')}`,
    record.record,
    `${othersShown(put.who, state)} To put them there all the same, confirm it: --sure, or "sure": true.`,
  );
}

function isPutting(draft: unknown): boolean {
  return typeof draft === 'object' && draft !== null && 'record' in draft && PUTTING.has(draft.record);
}

const PUTTING: ReadonlySet<unknown> = new Set(['lot', 'move', 'split', 'merge']);

interface Putting {
  readonly who: Subject & {readonly joins?: boolean};
  readonly unit: Unit;
}

/** Who is put into which unit; undefined where nobody is, or what is named is not there, which is refused elsewhere. */
function putting(record: RoomRecord, state: RoomState): Putting | undefined {
  const into = (code: string | undefined, who: Putting['who'] | undefined): Putting | undefined => {
    const history = state.units.get(code ?? '');
    return history === undefined || who === undefined ? undefined : {who, unit: valueAt(history, state.asOf)};
  };
  const homeOf = (lot: Lot | undefined) => lot?.stays.at(-1)?.unit;
  switch (record.record) {
    case 'lot': {
      const {code, candidates, taxon, needs, stages = {}, material} = record;
      if (state.lots.has(code)) return undefined;
      return into(record.unit, {
        code,
        candidates,
        taxon,
        needs,
        alive: stages,
        material,
        animals: total(stages),
      });
    }
    case 'move': {
      const lot = state.lots.get(record.lot);
      if (lot === undefined || homeOf(lot) === record.unit) return undefined;
      return into(record.unit, {...lot, animals: total(lot.alive)});
    }
    case 'split': {
      const parent = state.lots.get(record.lot);
      if (parent === undefined || homeOf(parent) === record.unit) return undefined;
      const {into: code, stages: alive} = record;
      return into(record.unit, {...parent, code, alive, material: undefined, animals: total(alive)});
    }
    case 'merge': {
      const [from, other] = [state.lots.get(record.lot), state.lots.get(record.into)];
      if (from === undefined || other === undefined || homeOf(from) === homeOf(other)) return undefined;
      const alive = put(other.alive, from.alive);
      return into(homeOf(other), {...other, alive, animals: total(alive), joins: true});
    }
    default:
      return undefined;
  }
}

/** Where to look for a unit that suits. */
function othersShown({code, candidates, animals, needs = {}}: Subject, {lots}: RoomState): string {
  if (lots.has(code)) return `teneral plan ${code} shows where they can live.`;
  const [first] = candidates;
  return first === undefined || animals === 0
    ? 'Choose another unit.'
    : `${['teneral plan', code, `--profile ${first.profile} --animals ${animals}`, needsOptions(needs)].join(' ').trim()} shows where they can live.`;
}
