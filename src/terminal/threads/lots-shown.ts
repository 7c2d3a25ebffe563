// The lots that have a thread: the open ones, in the order in which they began.
import {type Lot, openLots} from '../../records/state.ts';
import type {View} from '../sheet.ts';

export function lotsShown({facts: {desk}}: View): Lot[] {
  return openLots(desk.state);
}
