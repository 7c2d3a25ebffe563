// The room with everything archived, once somebody searched in it; else what is open.
import type {Desk} from '../work/desk.ts';
import type {View} from './sheet.ts';

/** A desk that has the code at hand, where there is one. */
export function deskWith(code: string, {facts, whole}: Pick<View, 'facts' | 'whole'>): Desk {
  const {lots, samples, specimens} = facts.desk.state;
  const isOpen = lots.has(code) || samples.has(code) || specimens.has(code);
  return isOpen || whole === undefined ? facts.desk : whole.desk;
}
