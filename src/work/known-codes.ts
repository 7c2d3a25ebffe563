// Codes that a person named and that must be there.
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';

/** @throws Refusal for the first that is not, with the nearest that is */
export function assertKnown(
  codes: readonly string[] = [],
  there: Pick<ReadonlyMap<string, unknown>, 'has' | 'keys'>,
  kind: string,
): void {
  const stranger = codes.find(code => !there.has(code));
  if (stranger === undefined) return;
  const near = nearest(stranger, there.keys());
  const mend = near === undefined ? 'teneral list shows the codes there are.' : `Nearest known is ${near}.`;
  throw new Refusal(`there is no ${kind} ${stranger}`, '', mend);
}
