// What makes a task needed once: a share pupated, adults near, adults hardened, a winter over, mould.
import {heaviestFirst} from '../records/candidates.ts';
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import {total} from '../records/stage.ts';
import type {Lot, RoomState, Rule, Specimen, Unit} from '../records/state.ts';
import {heldColdSince} from './cold.ts';
import type {Job} from './job.ts';
import {amissSince} from './last-answers.ts';
import {type Ledger, lastIn} from './ledger.ts';
import {hasFeeders} from './stages.ts';
import type {CareInput} from './task.ts';
import {type Clock, windowOf} from './window.ts';

type Trigger = NonNullable<Rule['when']>;

/** The exit is made ready for the first adult; so long after it was expected nobody needs telling. Common practice, no source. */
const TOO_LATE_TO_READY_DAYS = 1;

/** A job that is wanted when its trigger has come true since it was last done; undefined where neither ever was. */
export function triggeredJob(
  job: Pick<Job, 'rule' | 'unit' | 'lots'> & {readonly lot: Lot},
  trigger: Trigger,
  input: CareInput,
  ledger: Ledger,
  clock: Clock,
): Job | undefined {
  const {rule, lot, unit} = job;
  const deeds = ledger.ofLot(rule.task, lot);
  if (deeds.length === 0 && trueSince(trigger, lot, unit, undefined, input) === undefined) return undefined;
  return onceTrue(job, deeds, last => trueSince(trigger, lot, unit, last, input), clock);
}

function onceTrue(
  {rule, unit, lot, lots}: Pick<Job, 'rule' | 'unit' | 'lots'> & {readonly lot: Lot},
  deeds: Job['deeds'],
  trueAfter: (last: Instant | undefined) => Instant | undefined,
  clock: Clock,
): Job {
  return {
    rule,
    unit,
    lot,
    lots,
    deeds,
    lastDone: limit => lastIn(deeds, limit),
    windowAfter(last) {
      const since = trueAfter(last);
      return since === undefined ? null : windowOf(rule, since, lot.code, clock);
    },
  };
}

/** When the trigger came true, if it has not been answered since; undefined else. */
function trueSince(
  trigger: Trigger,
  lot: Lot,
  unit: Unit,
  last: Instant | undefined,
  input: CareInput,
): Instant | undefined {
  if ('mould' in trigger) {
    const seen = amissSince('mould', unit.code, input.state);
    return seen === undefined ? undefined : Math.max(seen, last ?? 0);
  }
  if ('subimago' in trigger) {
    const out = subimagoSince(lot, input.state);
    return out === undefined ? undefined : Math.max(out, last ?? 0);
  }
  if ('hardened' in trigger) return hardenedSince(lot, last, input);
  const once =
    'pupated' in trigger
      ? pupatedSince(lot, trigger.pupated)
      : 'chilledWeeks' in trigger
        ? chilledSince(lot, trigger.chilledWeeks, input)
        : adultsNearSince(lot, trigger.adultWithinDays, input);
  return last === undefined ? once : undefined;
}

/** The first count that held such a share of pupae; where nobody eats any more there is nothing to part. */
function pupatedSince(lot: Lot, share: number): Instant | undefined {
  if (!hasFeeders(lot)) return undefined;
  return lot.sightings.find(
    seen =>
      seen.kind === 'count' &&
      (seen.stages.pupa ?? 0) >= share * total(seen.stages) &&
      total(seen.stages) > 0,
  )?.at;
}

/** Whoever looked for adults has seen how the exit stands. */
function adultsNearSince(lot: Lot, days: number, {emergence, now}: CareInput): Instant | undefined {
  const p05 = emergence.get(lot.code)?.p05 ?? null;
  if (p05 === null || lot.tally.emerged > 0 || now > p05 + TOO_LATE_TO_READY_DAYS * MS_PER_DAY)
    return undefined;
  const since = Math.max(lot.startedAt, Math.round(p05) - days * MS_PER_DAY);
  return (lot.lastLook ?? 0) > since ? undefined : since;
}

/** When the oldest adult that is kept and not yet collected had hardened; undefined where its kind says no time. */
function hardenedSince(
  lot: Lot,
  last: Instant | undefined,
  {state, profiles}: CareInput,
): Instant | undefined {
  const hours = heaviestFirst(lot.candidates).flatMap(
    ({profile}) => profiles.get(profile)?.adult.hardenHours ?? [],
  )[0];
  if (hours === undefined) return undefined;
  const ready = lot.specimens
    .map(code => state.specimens.get(code))
    .filter(specimen => specimen?.kind === 'adult' && specimen.fate === 'kept' && !isSubimago(specimen))
    .map(specimen => (specimen?.imagoAt ?? specimen!.at) + hours * MS_PER_HOUR)
    .filter(at => last === undefined || at > last);
  return ready.length === 0 ? undefined : Math.min(...ready);
}

/** Since when the subimago that waits longest has been out; undefined where none of the lot waits to moult. */
export function subimagoSince(lot: Lot, {specimens}: RoomState): Instant | undefined {
  const out = lot.specimens
    .map(code => specimens.get(code))
    .filter(
      specimen => specimen?.fate === 'kept' && isSubimago(specimen) && specimen.preparations.length === 0,
    )
    .map(specimen => specimen!.at);
  return out.length === 0 ? undefined : Math.min(...out);
}

/** A subimago has still to moult. */
function isSubimago({subimagoAt, imagoAt}: Specimen): boolean {
  return subimagoAt !== undefined && imagoAt === undefined;
}

function chilledSince(lot: Lot, weeks: number, {state, now}: CareInput): Instant | undefined {
  const stay = lot.stays.at(-1);
  const heldFrom = stay === undefined ? undefined : heldColdSince(stay.unit, state, now);
  return heldFrom === undefined ? undefined : Math.max(stay!.from, heldFrom) + weeks * 7 * MS_PER_DAY;
}
