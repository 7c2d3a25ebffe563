// The rearing label: from which stage and host an adult, a parasitoid or a voucher comes, and when it came out.
// "ex" the host, "on" its plant, "em." the date or the interval between two looks: La Salle's CSIRO collecting
// protocol. "ex larva", "ex pupa", "ex ovo" mark the stage that was collected: from memory.

import type {Civil} from '../../records/civil.ts';
import type {Instant} from '../../records/entry.ts';
import {type KeptPart, keptParts} from '../../records/kept-parts.ts';
import type {Stage} from '../../records/stage.ts';
import type {Lot, RoomState, Sample, Specimen} from '../../records/state.ts';
import {labelDay, labelSpan} from './label-dates.ts';
import {sexSign} from './sex-sign.ts';

/** Nothing where an adult was caught and not reared. */
export function rearingLines(specimen: Specimen, {lots, samples}: RoomState, civil: Civil): string[] {
  const {kind, stage, animal, individuals} = specimen;
  const lot = lots.get(specimen.lot ?? '');
  if (lot === undefined && (kind !== 'voucher' || stage === undefined || stage === 'adult')) return [];
  const lines = [
    ...origin(specimen, lot, lots, hostOf(samples.get(specimen.sample))),
    lot === undefined ? '' : cameOut(specimen, civil),
    lot === undefined ? '' : `lot ${lot.code}${animal === undefined ? '' : `, animal ${animal}`}`,
    individuals === 1 ? '' : `${individuals} specimens`,
    ...keptParts(specimen).map(part => `${partNoun(part)} ${part.code}`),
  ];
  return lines.filter(line => line !== '');
}

/** What is kept with a specimen in a vial of its own. */
export function partNoun({what, usual}: KeptPart): string {
  return what === 'other' ? 'part' : (what ?? usual).replace('-', ' ');
}

function origin(specimen: Specimen, lot: Lot | undefined, lots: RoomState['lots'], host: string): string[] {
  const {kind, stage, hyper, outOf} = specimen;
  const on = host === '' ? '' : `on ${host}`;
  switch (kind) {
    case 'adult':
      return [`ex ${lot === undefined ? 'immature' : collectedAs(rootOf(lot, lots))} ${on}`.trim()];
    case 'parasitoid': {
      const animal = stage === undefined ? 'host' : nounOf(stage);
      const out = lot?.taxon === undefined ? `ex ${animal}` : `ex ${animal} of ${lot.taxon}`;
      const first = outOf ?? (hyper === true ? 'parasitoid' : undefined);
      return first === undefined ? [out, on] : [`ex ${first}`, out, on];
    }
    case 'voucher':
      return [`${stage === undefined ? 'voucher' : nounOf(stage)} ${on}`.trim()];
  }
}

function cameOut({kind, sex, since, at, imagoAt}: Specimen, civil: Civil): string {
  const day = (instant: Instant) => civil.dayOf(instant);
  if (kind === 'voucher') return `preserved ${labelDay(day(at))}`;
  const sign = sexSign(sex);
  const out = `em. ${labelSpan(day(since ?? at), day(at))}`;
  const imago = imagoAt === undefined ? '' : `, imago ${labelDay(day(imagoAt))}`;
  return `${sign === undefined ? '' : `${sign} `}${out}${imago}`;
}

/** "Brassica oleracea, leaf". */
function hostOf(sample: Sample | undefined): string {
  return [sample?.host, sample?.hostPart].filter(part => part !== undefined).join(', ');
}

/** The lot in which the animals of a lot began: that of its parent, where it was split off. */
function rootOf(lot: Lot, lots: RoomState['lots']): Lot {
  if (lot.origin.kind !== 'lot' || lot.origin.how !== 'split') return lot;
  const parent = lots.get(lot.origin.code);
  return parent === undefined ? lot : rootOf(parent, lots);
}

/** "larva", "larva or pupa", "ovo", "galls". */
function collectedAs({material, cohorts, origin}: Lot): string {
  if (material !== undefined) return material.what;
  if (origin.kind !== 'sample') return 'ovo';
  const stages = Object.entries(cohorts[0]?.stages ?? {}).filter(([, count]) => count > 0);
  const nouns = new Set(stages.map(([stage]) => (stage === 'egg' ? 'ovo' : nounOf(stage))));
  return nouns.size === 0 ? 'immature' : [...nouns].join(' or ');
}

/** An instar is no part of it. */
function nounOf(stage: Stage): string {
  return stage.split('-')[0]!;
}
