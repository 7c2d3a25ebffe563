// What is amiss, what was done about it, and what has passed: the life of alerts.
import type {Alert} from '../care/alert.ts';
import {amissNow, seenTo} from '../care/alerts.ts';
import {type Instant, MS_PER_DAY} from '../records/entry.ts';
import type {Desk} from './desk.ts';
import {factsOf} from './facts.ts';
import {careInput} from './today.ts';

export interface AlertRow extends Omit<Alert, 'since'> {
  /** `open`: nobody has seen to it. `acknowledged`: somebody did, and the cause is still there. */
  readonly state: 'open' | 'acknowledged';
  readonly since: string;
  readonly acknowledged: {readonly at: string; readonly done: string} | null;
}

/** An alert that was acknowledged and whose cause is gone. */
export interface PassedAlert {
  readonly id: string;
  readonly state: 'passed';
  readonly acknowledged: {readonly at: string; readonly done: string};
}

export interface Alerts {
  readonly alerts: readonly AlertRow[];
  readonly passed: readonly PassedAlert[];
}

/** Those that passed are told for so long. */
const TOLD_MS = 30 * MS_PER_DAY;

export async function alerts(desk: Desk): Promise<Alerts> {
  const {state, civil, now} = desk;
  const said = ({at, done}: {readonly at: Instant; readonly done: string}) => ({at: civil.iso(at), done});
  const there = amissNow(await careInput(desk), await factsOf(desk));
  const ids = new Set(there.map(({id}) => id));
  return {
    alerts: there.map(alert => {
      const seen = seenTo(alert, state);
      return {
        ...alert,
        since: civil.iso(alert.since),
        state: seen === undefined ? 'open' : 'acknowledged',
        acknowledged: seen === undefined ? null : said(seen),
      };
    }),
    passed: [...state.acknowledged]
      .filter(([id, {at}]) => !ids.has(id) && at > now - TOLD_MS)
      .map(([id, seen]) => ({id, state: 'passed', acknowledged: said(seen)})),
  };
}
