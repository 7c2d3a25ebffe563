// The determination label: the name, who gave it, and the year. "det." with name and year: from memory.
import type {Civil} from '../../records/civil.ts';
import {atOf} from '../../records/entry.ts';
import {nameIn} from '../../records/fold-specimens.ts';
import type {Specimen} from '../../records/state.ts';

/** Of its last identification; nothing where nobody has identified it. */
export function determinationLines({identifications}: Specimen, civil: Civil): string[] {
  const last = identifications.at(-1);
  if (last === undefined || last.record.record !== 'identification') return [];
  const {by = last.by, on = civil.dayOf(atOf(last))} = last.record;
  return [nameIn(last.record), `det. ${by} ${on.slice(0, 4)}`];
}
