// Taking back the last request of a person: every entry of it is voided, together.
import {sentenceOf} from '../records/daybook.ts';
import type {Entry} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import type {RoomState} from '../records/state.ts';
import {openDesk} from './desk.ts';
import {type Recorded, record} from './record.ts';
import type {Session} from './session.ts';

export interface Undone extends Recorded {
  /** What no longer counts, in the order it was written. */
  readonly voided: readonly Entry[];
}

/** @throws Refusal where this person has nothing to take back, or something later rests on it */
export async function undo(session: Session): Promise<Undone> {
  const {state} = await openDesk(session, 'all');
  const voided = newestRequestOf(state, session.by);
  if (voided.length === 0)
    throw new Refusal(
      `${session.by} has written nothing that could be taken back`,
      'undo',
      'A single entry of anybody is taken back with teneral void ENTRY; teneral daybook shows the entries.',
    );
  const reason = `undone: ${voided.map(({record}) => sentenceOf(record)).join('; ')}`.slice(0, MOST_REASON);
  const voids = voided.map(({id}) => ({record: 'void', entry: id, reason, undo: true})).reverse();
  return {...(await record(session, voids)), voided};
}

/** A reason fits a text field. */
const MOST_REASON = 500;

/** The entries of the person's newest request that still count, a void among them; what an undo wrote is passed over. */
function newestRequestOf({history, voided}: RoomState, by: string): Entry[] {
  const counts = ({id, by: writer, record}: Entry) =>
    writer === by && !voided.has(id) && !(record.record === 'void' && record.undo === true);
  const request = history.findLast(counts)?.request;
  return history.filter(entry => entry.request === request && counts(entry));
}
