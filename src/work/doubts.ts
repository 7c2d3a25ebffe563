// Doubts about what is to be written down: the daybook's own, figures of a profile that look wrong, and coordinates held
// against their country.
import {doubtsAbout, type KinOf, type OrdersOf} from '../records/doubts.ts';
import type {Entry} from '../records/entry.ts';
import {genusOf, kinOf, wordsOf} from '../records/orders.ts';
import {Refusal} from '../records/refusal.ts';
import type {Fault} from '../records/rule.ts';
import type {Profile} from '../records/schema/index.ts';
import type {Lot, RoomState} from '../records/state.ts';
import {hardenHoursOf} from './hints.ts';
import {checkedProfile} from './profile-check.ts';
import {profileCodes, profilesOf} from './profiles.ts';

/** Refused for now: whoever has looked again and is sure may say so, and it is written down all the same. */
export class Doubt extends Refusal {
  /** What it is must be said first: no animal of the lot, it seems. */
  readonly isStranger: boolean;

  constructor(what: string, where: string, mend: string, isStranger = false) {
    super(what, where, mend);
    this.isStranger = isStranger;
  }
}

/**
 * Ask about whatever is doubtful and not confirmed.
 * @param where how to name an entry to a person, by its position
 * @throws Doubt for the first of them
 */
export async function askAboutDoubts(
  before: RoomState,
  additions: readonly Entry[],
  where: (index: number) => string,
): Promise<void> {
  const open = additions.filter(({record}) => record.sure !== true);
  if (open.length === 0) return;
  const hours = new Map<string, number | undefined>();
  if (open.some(({record}) => record.record === 'preparation'))
    for (const lot of before.lots.values()) hours.set(lot.code, await hardenHoursOf(lot, {state: before}));
  const {ordersOf, kin} = await namesFor(
    open.flatMap(({record}) => (record.record === 'identification' ? [record.taxon] : [])),
    before,
  );
  const doubts = doubtsAbout(before, additions, (lot: Lot) => hours.get(lot.code), ordersOf, kin);
  for (const [index, entry] of additions.entries()) {
    if (entry.record.sure === true) continue;
    const doubt = doubts.get(entry.id) ?? doubtfulProfile(entry) ?? (await doubtfulPlace(entry));
    if (doubt === undefined) continue;
    const {record} = entry.record;
    const place = where(index) === '' ? record : `${where(index)} (${record})`;
    throw new Doubt(
      doubt.what,
      place,
      `${doubt.mend} If it is right all the same, confirm it: --sure, or "sure": true.`,
      doubt.isStranger,
    );
  }
}

/** What names to be given say, and to which orders the animals of a lot may belong. Nothing is read where none is given. */
async function namesFor(
  taxa: readonly string[],
  state: RoomState,
): Promise<{readonly ordersOf: OrdersOf; readonly kin: KinOf}> {
  if (taxa.length === 0) return {ordersOf: () => [], kin: () => undefined};
  const lots = [...state.lots.values()];
  const candidates = lots.flatMap(lot => lot.candidates.map(({profile}) => profile));
  const words = new Set([...taxa, ...lots.flatMap(({taxon}) => taxon ?? [])].flatMap(wordsOf));
  // A bundled profile of a species is coded by its genus first.
  const named = (await profileCodes()).filter(code => words.has(code.split('-')[0]!));
  const known = await profilesOf([...candidates, ...named], state);
  const genera = [...known.values(), ...state.profiles.values()].filter(
    profile => genusOf(profile) !== undefined,
  );
  const kin = (taxon: string) => kinOf(taxon, genera);
  return {kin, ordersOf: lot => ordersOf(lot, known, kin)};
}

/** By its candidates; where one of them has no order of its own, or there are none, by its name. */
function ordersOf(
  {candidates, taxon}: Lot,
  profiles: ReadonlyMap<string, Profile>,
  kin: KinOf,
): readonly string[] {
  const likely = candidates.filter(({weight}) => weight > 0);
  const orders = likely.flatMap(({profile}) => profiles.get(profile)?.classification.order ?? []);
  if (likely.length > 0 && orders.length === likely.length) return [...new Set(orders)];
  const order = taxon === undefined ? undefined : kin(taxon)?.order;
  return order === undefined ? [] : [order];
}

/** Figures that are unusual, or that the published ones beside them contradict. */
function doubtfulProfile({record}: Entry): Fault | undefined {
  if (record.record !== 'profile') return undefined;
  const [first] = checkedProfile(record).doubts;
  return first === undefined
    ? undefined
    : {what: `${first.field}: ${first.why}`, mend: 'Correct the figure.'};
}

async function doubtfulPlace({record}: Entry): Promise<Fault | undefined> {
  if (record.record !== 'sample') return undefined;
  const {country, latitude, longitude} = record.place ?? {};
  if (country === undefined || latitude === undefined || longitude === undefined) return undefined;
  const {misplaced} = await import('../exchange/country-bounds.ts');
  const what = await misplaced(country, {latitude, longitude});
  return what === undefined ? undefined : {what, mend: 'Correct the coordinates or the country.'};
}
