// Measurements and facts: the sum of every lot, what its animals lived in, what was weighed and measured.
import {balanceOf} from '../../records/balance.ts';
import {atOf} from '../../records/entry.ts';
import {total} from '../../records/stage.ts';
import type {Lot, Sample} from '../../records/state.ts';
import {eventOf} from './events.ts';
import type {ArchiveFacts} from './facts.ts';
import type {MeasurementRow} from './terms.ts';

export function measurementRows(facts: ArchiveFacts): MeasurementRow[] {
  const {state} = facts;
  return [
    ...[...state.samples.values()].flatMap(sample => ofSample(sample, facts)),
    ...[...state.lots.values()].flatMap(lot => [...ofBalance(lot, facts), ...ofWarmth(lot, facts)]),
    ...ofWeights(facts),
  ];
}

/** Every account of the sum, so that it can be added up again: what came in = what is alive + what went out. */
function ofBalance(lot: Lot, facts: ArchiveFacts): MeasurementRow[] {
  const {lot: code, exact, alive, ...accounts} = balanceOf(lot);
  const event = facts.idOf({kind: 'lot', code});
  const figures = {...accounts, alive: total(alive)};
  return Object.entries(figures).map(([account, count]) =>
    row(facts, event, account, {
      'dwc:measurementType': `animals ${spokenAccount(account)}`,
      'dwc:measurementValue': String(count),
      'dwc:measurementUnit': 'individuals',
      'dwc:measurementRemarks': exact ? undefined : 'at least: animals are hidden or numbers estimated',
    }),
  );
}

/** "splitOff" is "split off". */
function spokenAccount(account: string): string {
  return account.replace(/[A-Z]/g, letter => ` ${letter.toLowerCase()}`);
}

function ofWarmth({code}: Lot, facts: ArchiveFacts): MeasurementRow[] {
  const warmth = facts.warmth.get(code);
  if (warmth === undefined) return [];
  const event = facts.idOf({kind: 'lot', code});
  const figures = {minimum: warmth.minimumC, mean: warmth.meanC, maximum: warmth.maximumC};
  return Object.entries(figures).map(([which, celsius]) =>
    row(facts, event, `${which} temperature`, {
      'dwc:measurementType': `${which} temperature during rearing`,
      'dwc:measurementValue': celsius.toFixed(2),
      'dwc:measurementUnit': '°C',
      'dwc:measurementMethod': warmth.basis,
    }),
  );
}

function ofSample({code, waterC, deadOnArrival, collected}: Sample, facts: ArchiveFacts): MeasurementRow[] {
  const event = facts.idOf({kind: 'sample', code});
  return [
    ...(waterC === undefined
      ? []
      : [
          row(facts, event, 'water temperature', {
            'dwc:measurementType': 'water temperature',
            'dwc:measurementValue': String(waterC),
            'dwc:measurementUnit': '°C',
            'dwc:measurementDeterminedDate': collected.to ?? collected.from,
          }),
        ]),
    ...(deadOnArrival === undefined
      ? []
      : [
          row(facts, event, 'dead on arrival', {
            'dwc:measurementType': 'animals dead on arrival',
            'dwc:measurementValue': String(deadOnArrival),
            'dwc:measurementUnit': 'individuals',
          }),
        ]),
  ];
}

/** Weights stand in notes about a specimen or a lot. */
function ofWeights(facts: ArchiveFacts): MeasurementRow[] {
  const {state, idOf, civil} = facts;
  return state.entries.flatMap(entry => {
    const {record} = entry;
    if (record.record !== 'note' || record.weightMg === undefined) return [];
    const {about = '', animal, weightMg} = record;
    const specimen = state.specimens.get(about);
    if (specimen === undefined && !state.lots.has(about)) return [];
    const event = specimen === undefined ? idOf({kind: 'lot', code: about}) : eventOf(specimen, facts);
    return [
      row(facts, event, entry.id, {
        'dwc:measurementType': 'body mass',
        'dwc:measurementValue': String(weightMg),
        'dwc:measurementUnit': 'mg',
        'dwc:measurementDeterminedDate': civil.iso(atOf(entry)),
        'dwc:measurementRemarks': animal === undefined ? `of ${about}` : `of animal ${animal} of ${about}`,
      }),
    ];
  });
}

function row({idOf}: ArchiveFacts, event: string, what: string, told: MeasurementRow): MeasurementRow {
  return {'dwc:eventID': event, 'dwc:measurementID': idOf({kind: 'measurement', of: event, what}), ...told};
}
