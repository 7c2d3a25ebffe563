// What is still missing of a field sample and all its specimens, in as few lines as it takes.
import {openEnds as openEndsOf} from '../../records/open-ends.ts';
import type {Desk} from '../../work/desk.ts';

export function openEnds(code: string, {state, now}: Desk): string[] {
  const own = openEndsOf(state, now).filter(
    ({kind, code: other}) =>
      (kind === 'sample' && other === code) ||
      (kind === 'lot' && state.lots.get(other)?.sample === code) ||
      (kind === 'specimen' && state.specimens.get(other)?.sample === code),
  );
  const missing = new Map<string, string[]>();
  for (const {code: other, missing: what} of own)
    missing.set(what, [...(missing.get(what) ?? []), ...(other === code ? [] : [other])]);
  return [...missing].map(([what, codes]) => (codes.length === 0 ? what : `${what}: ${codes.join(' ')}`));
}
