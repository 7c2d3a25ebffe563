// Events: the field samples, the parts of them, the rearing of every lot, and what came out of it and when. A rearing
// indoors does not lie inside the collecting in space and time, so it is no child of it (Darwin Core conceptual
// model, 2026); relations lead from what was reared to the field sample.
import type {Instant} from '../../records/entry.ts';
import {methods} from '../../records/methods.ts';
import type {Lot, RoomState, Sample, Specimen} from '../../records/state.ts';
import {valueAt} from '../../records/state.ts';
import type {ArchiveFacts} from './facts.ts';
import type {EventRow} from './terms.ts';

export function eventRows(facts: ArchiveFacts): EventRow[] {
  const {state} = facts;
  const lots = [...state.lots.values()];
  return [
    ...[...state.samples.values()].map(sample => sampleEvent(sample, facts)),
    ...lots.map(lot => rearingEvent(lot, facts)),
    ...findings(state).map(([entry, specimens]) => findingEvent(entry, specimens, facts)),
  ];
}

/** The event at which a specimen was found: with all others of its entry, or with its field sample. */
export function eventOf({lot, sample, entry}: Specimen, {idOf}: ArchiveFacts): string {
  return lot === undefined ? idOf({kind: 'sample', code: sample}) : idOf({kind: 'entry', code: entry});
}

/** A time from one instant to another, ISO 8601-1:2019. */
export function interval(from: string, to: string): string {
  return from === to ? to : `${from}/${to}`;
}

/** Without a datum coordinates say so; without coordinates there is none to say. */
const NO_DATUM = 'not recorded';

function sampleEvent(sample: Sample, {idOf}: ArchiveFacts): EventRow {
  const {code, of, collected, method, trap, place = {}, habitat, substrate, amount} = sample;
  const {latitude, longitude, uncertaintyM, datum, elevationM} = place;
  return {
    'dwc:eventID': idOf({kind: 'sample', code}),
    'dwc:parentEventID': of === undefined ? undefined : idOf({kind: 'sample', code: of}),
    'dwc:eventCategory': 'MaterialGathering',
    'dwc:eventType': of === undefined ? 'field sample' : 'part of a field sample',
    'dwc:fieldNumber': code,
    'dwc:eventDate': interval(trap?.lastEmptied ?? collected.from, collected.to ?? collected.from),
    'dwc:samplingProtocol': methods[method].words,
    'dwc:samplingEffort': trap?.traps === undefined ? undefined : `${trap.traps} traps`,
    'dwc:sampleSizeValue': amount?.amount.toString(),
    'dwc:sampleSizeUnit': amount?.unit,
    'dwc:habitat': habitat,
    'dwc:country': place.country,
    'dwc:stateProvince': place.region,
    'dwc:locality': place.locality,
    'dwc:decimalLatitude': latitude?.toString(),
    'dwc:decimalLongitude': longitude?.toString(),
    'dwc:geodeticDatum': latitude === undefined ? undefined : (datum ?? NO_DATUM),
    'dwc:coordinateUncertaintyInMeters': uncertaintyM?.toString(),
    'dwc:verbatimCoordinates': place.verbatimCoordinates,
    'dwc:minimumElevationInMeters': elevationM?.toString(),
    'dwc:maximumElevationInMeters': elevationM?.toString(),
    'dwc:eventRemarks': remarks([
      sample.part,
      sample.note,
      substrate === undefined ? undefined : `substrate: ${substrate}`,
      sample.medium === 'none' ? undefined : `caught in: ${sample.medium.replace('-', ' and ')}`,
      sample.permit === undefined ? undefined : `permit: ${sample.permit}`,
      sample.weather === undefined ? undefined : `weather: ${sample.weather}`,
    ]),
  };
}

function rearingEvent({code, startedAt, closed, stays, sample}: Lot, facts: ArchiveFacts): EventRow {
  const {idOf, state, civil} = facts;
  const units = [...new Set(stays.map(({unit}) => unit))];
  return {
    'dwc:eventID': idOf({kind: 'lot', code}),
    'dwc:eventCategory': 'Event',
    'dwc:eventType': 'rearing',
    'dwc:fieldNumber': code,
    'dwc:eventDate': interval(civil.iso(startedAt), civil.iso(closed?.at ?? state.asOf)),
    'dwc:samplingProtocol': `reared in captivity: ${units.map(unit => unitWords(unit, state)).join(', ')}`,
    'dwc:locationRemarks': INDOORS,
    'dwc:eventRemarks': remarks([
      `from field sample ${sample}`,
      closed === undefined ? 'goes on' : `closed: ${closed.reason ?? 'no reason given'}`,
    ]),
  };
}

const INDOORS = 'in the rearing room; the place of collecting is that of the field sample';

function findingEvent(entry: string, specimens: readonly Specimen[], facts: ArchiveFacts): EventRow {
  const {idOf, civil} = facts;
  const [{kind, lot = '', since, at}] = specimens as [Specimen];
  const iso = (instant: Instant) => civil.iso(instant);
  return {
    'dwc:eventID': idOf({kind: 'entry', code: entry}),
    'dwc:parentEventID': idOf({kind: 'lot', code: lot}),
    'dwc:eventCategory': kind === 'parasitoid' ? 'OrganismInteraction' : 'Occurrence',
    'dwc:eventType': kind === 'voucher' ? 'preservation' : 'emergence',
    'dwc:fieldNumber': lot,
    'dwc:eventDate': interval(iso(since ?? at), iso(at)),
    'dwc:samplingProtocol':
      kind === 'voucher' ? 'preserved while reared' : 'reared to emergence in captivity',
    'dwc:locationRemarks': INDOORS,
    'dwc:eventRemarks': since === undefined || since === at ? undefined : 'between two looks',
  };
}

/** Specimens of lots by the entry that brought them. */
function findings({specimens}: RoomState): [entry: string, specimens: Specimen[]][] {
  const byEntry = new Map<string, Specimen[]>();
  for (const specimen of specimens.values()) {
    if (specimen.lot === undefined) continue;
    const together = byEntry.get(specimen.entry);
    if (together === undefined) byEntry.set(specimen.entry, [specimen]);
    else together.push(specimen);
  }
  return [...byEntry];
}

function unitWords(code: string, {units, asOf}: RoomState): string {
  const history = units.get(code);
  return history === undefined ? code : `${valueAt(history, asOf).type.replace('-', ' ')} ${code}`;
}

export function remarks(parts: readonly (string | undefined)[]): string | undefined {
  const said = parts.filter(part => part !== undefined && part !== '');
  return said.length === 0 ? undefined : said.join('; ');
}
