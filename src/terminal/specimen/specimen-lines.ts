// What is known of a specimen, line by line.

import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {instantWords} from '../../exchange/time-words.ts';
import {partWords, sentenceOf} from '../../records/daybook.ts';
import {atOf, type Entry} from '../../records/entry.ts';
import {keptParts} from '../../records/kept-parts.ts';
import type {Specimen} from '../../records/state.ts';
import type {Desk} from '../../work/desk.ts';

export function specimenLines(specimen: Specimen, desk: Desk): Line[] {
  const {civil, now, state} = desk;
  const {kind, sex, individuals, lot, sample, at, since, stage, fate, condition} = specimen;
  const many = individuals === 1 ? '' : `, ${individuals} in one vial`;
  const found = `${instantWords(at, civil, now)}${since === undefined ? '' : `, not yet ${instantWords(since, civil, now)}`}`;
  const about = state.history.filter(
    ({id, record}) => record.record === 'note' && record.about === specimen.code && !state.voided.has(id),
  );
  return [
    fact(
      'what',
      `${specimen.hyper === true ? 'hyperparasitoid' : kind}${sex === undefined || sex === 'unknown' ? '' : `, ${sex}`}${many}`,
    ),
    fact('from', lot === undefined ? `straight out of ${sample}` : `${lot} of ${sample}`),
    fact('found', found),
    fact(kind === 'parasitoid' ? 'host stage' : 'stage', stage),
    fact('out of', specimen.outOf),
    fact('animal', specimen.animal),
    fact('imago', specimen.imagoAt === undefined ? undefined : instantWords(specimen.imagoAt, civil, now)),
    fact('fate', [fate, condition].filter(part => part !== undefined).join(', ')),
    fact('kept with it', kept(specimen)),
    fact(
      'labels',
      specimen.printed.length === 0
        ? 'none printed yet'
        : specimen.printed
            .map(({kind: label, at: printed}) => `${label} ${instantWords(printed, civil, now)}`)
            .join(', '),
    ),
    ...section('names it had', specimen.identifications, desk, 'not yet identified'),
    ...section('preparation', specimen.preparations, desk, 'not yet prepared'),
    ...section('remarks', about, desk),
  ].flat();
}

function fact(name: string, value: string | undefined): Line[] {
  return value === undefined || value === ''
    ? []
    : [[piece(` ${name.padEnd(14)} `, 'expected'), piece(value)]];
}

function kept(specimen: Specimen): string {
  const sure = ['', 'of the same animal', 'of the same container and day', 'of the same lot', 'assumed'];
  return keptParts(specimen)
    .map(part => `${partWords(part)}${part.association === undefined ? '' : ` (${sure[part.association]})`}`)
    .join(', ');
}

function section(title: string, entries: readonly Entry[], {civil, now}: Desk, none?: string): Line[][] {
  if (entries.length === 0) return none === undefined ? [] : [[[], line(` ${title}: ${none}`, 'late')]];
  const lines = [...entries].reverse().map(entry => {
    const {id, by, record} = entry;
    return line(` ${id}  ${instantWords(atOf(entry), civil, now)}  ${sentenceOf(record)}, written by ${by}`);
  });
  return [[[], line(` ${title}`, 'heading'), ...lines]];
}
