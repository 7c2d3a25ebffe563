// The jobs of a room: one for each task of each lot or unit.
import {type Instant, MS_PER_DAY, MS_PER_HOUR} from '../records/entry.ts';
import type {Lot, Rule, Unit} from '../records/state.ts';
import type {OpenTime} from './calendar.ts';
import {heldColdSince} from './cold.ts';
import {finishJobs} from './finishing.ts';
import {grouped} from './grouped.ts';
import {groupsOf} from './groups.ts';
import {holdHoursBy} from './hold-time.ts';
import type {Job} from './job.ts';
import {amissSince} from './last-answers.ts';
import {lastDoneForLot} from './last-done.ts';
import {type Ledger, lastIn, ledgerOf} from './ledger.ts';
import {lookDeeds, lookWindow} from './looks.ts';
import {nearestFinder} from './nearest.ts';
import {occupiedSince, unitOf} from './occupancy.ts';
import {letRest, restOf} from './rest.ts';
import {eats, hasFeeders, isLiving, isStage, restsSince, since, stagesOf} from './stages.ts';
import {rulesInForce} from './start-rules.ts';
import {isFinishing, isForLot, isWanted, isWantedAtOnce} from './subjects.ts';
import type {CareInput} from './task.ts';
import {subimagoSince, triggeredJob} from './triggers.ts';
import {compareNaturally} from './walking-order.ts';
import {type Clock, clockOf, firstWindow, type Window, windowOf} from './window.ts';

interface Setting {
  readonly input: CareInput;
  readonly open: OpenTime;
  readonly clock: Clock;
  readonly ledger: Ledger;
}

/** A lot in its unit, with the rule that is nearest to it. */
interface Wanting {
  readonly rule: Rule;
  readonly lot: Lot;
  readonly unit: Unit;
}

/** Every job of the room's living lots and their units, and what finishes the lots that are empty. */
export function jobsOf(input: CareInput, open: OpenTime): readonly Job[] {
  let jobs = known.get(input);
  if (jobs === undefined) {
    jobs = findJobs(input, open).map(remembering);
    known.set(input, jobs);
  }
  return jobs;
}

/** The tasks and the alerts of one question come from the same jobs. */
const known = new WeakMap<CareInput, readonly Job[]>();

/** Tasks, days and visits all ask a job for the window of its last time. */
function remembering({rule, unit, lot, lots, deeds, lastDone, windowAfter}: Job): Job {
  let asked: Instant | undefined;
  let window: Window | null | undefined;
  return {
    rule,
    unit,
    lot,
    lots,
    deeds,
    lastDone,
    windowAfter(last) {
      if (window === undefined || asked !== last) {
        window = windowAfter(last);
        asked = last;
      }
      return window;
    },
  };
}

function findJobs(input: CareInput, open: OpenTime): Job[] {
  const {state, civil, instantAfterDegreeDays} = input;
  const setting = {input, open, clock: clockOf(civil, instantAfterDegreeDays), ledger: ledgerOf(state)};
  const rules = rulesInForce(state.rules, input.profiles);
  const wanting = wantings(
    input,
    rules.filter(rule => !isFinishing(rule)),
  );
  return [
    ...wanting.filter(({rule}) => isForLot(rule)).flatMap(each => lotJob(each, setting) ?? []),
    ...unitJobs(
      wanting.filter(({rule}) => !isForLot(rule)),
      setting,
    ),
    ...finishJobs(state, rules.filter(isFinishing), setting.ledger, setting.clock),
  ];
}

function wantings(input: CareInput, rules: readonly Rule[]): Wanting[] {
  const {state, profiles} = input;
  const nearest = nearestFinder(rules);
  const wanting: Wanting[] = [];
  for (const lot of state.lots.values()) {
    const living = isLiving(lot);
    // The last of a lot may be a subimago: nobody is left in its unit, but it has still to moult.
    const tended = !living && lot.closed === undefined && subimagoSince(lot, state) !== undefined;
    const unit = living || tended ? unitOf(lot, state) : undefined;
    if (unit === undefined) continue;
    const {code, type} = unit;
    const groups = groupsOf(lot, profiles, state.samples.get(lot.sample));
    const housed = {...groups, lot: lot.code, unit: code, type, stages: stagesOf(lot)};
    for (const rule of nearest(housed))
      if (living ? isWanted(rule, lot, unit) : rule.task === 'tend-subimago') wanting.push({rule, lot, unit});
    if (!living || pupaeExpectedSince(lot, type, input) === undefined) continue;
    const picking = nearest({...housed, stages: [...housed.stages, 'pupa']}).find(
      ({task}) => task === 'move-pupae',
    );
    if (picking !== undefined) wanting.push({rule: picking, lot, unit});
  }
  return wanting;
}

/** Undefined for what waits for something to come true that never has: most of a large room. */
function lotJob(wanting: Wanting, setting: Setting): Job | undefined {
  const {rule, lot, unit} = wanting;
  if (rule.task === 'look') return lookJob(wanting, setting);
  if (rule.when === undefined) return intervalJob(wanting, setting);
  return triggeredJob(
    {rule, unit, lot, lots: [lot]},
    rule.when,
    setting.input,
    setting.ledger,
    setting.clock,
  );
}

function lookJob({rule, lot, unit}: Wanting, {input, open, clock, ledger}: Setting): Job | undefined {
  const {state, emergence, profiles} = input;
  const deeds = lookDeeds(lot, ledger);
  const deedsOf = (each: Lot) => (each === lot ? deeds : lookDeeds(each, ledger));
  const outlook = emergence.get(lot.code);
  const looking = {
    lot,
    type: unit.type,
    outlook,
    holdHours: holdHoursBy(rule, lot, outlook, profiles),
    lots: state.lots,
  };
  const windowAfter = (last: Instant | undefined) => lookWindow(rule, {...looking, last}, open, clock);
  if (deeds.length === 0 && windowAfter(undefined) === null) return undefined;
  return {
    rule,
    unit,
    lot,
    lots: [lot],
    deeds,
    lastDone: limit => lastDoneForLot(lot, limit, deedsOf, state.lots),
    windowAfter,
  };
}

function intervalJob({rule, lot, unit}: Wanting, {input, clock, ledger}: Setting): Job {
  const {lots} = input.state;
  const expected = rule.task === 'move-pupae' ? pupaeExpectedSince(lot, unit.type, input) : undefined;
  const begins = expected ?? wantedSince(rule, lot, unit, lots);
  return {
    rule,
    unit,
    lot,
    lots: [lot],
    deeds: ledger.ofLot(rule.task, lot),
    lastDone: limit => lastDoneForLot(lot, limit, each => ledger.ofLot(rule.task, each), lots),
    windowAfter(last) {
      if (last !== undefined && last >= begins) return windowOf(rule, last, lot.code, clock);
      const first = isWantedAtOnce(rule, unit.type) ? firstWindow : windowOf;
      return first(rule, begins, lot.code, clock);
    },
  };
}

/** Pupae are picked out of water from so long before one adult in twenty is out. Common practice, no source. */
const PICK_BEFORE_DAYS = 2;

/** Since when pupae are to be looked for in water where nobody has seen one yet; undefined where they are not. */
function pupaeExpectedSince(lot: Lot, type: Unit['type'], {emergence, now}: CareInput): Instant | undefined {
  if (type !== 'aquarium' || !hasFeeders(lot) || stagesOf(lot).includes('pupa')) return undefined;
  const p05 = emergence.get(lot.code)?.p05 ?? null;
  if (p05 === null || p05 - PICK_BEFORE_DAYS * MS_PER_DAY > now) return undefined;
  return Math.max(lot.startedAt, Math.round(p05) - PICK_BEFORE_DAYS * MS_PER_DAY);
}

/** Since when the lot has had animals that the task is for. */
function wantedSince(
  {task, for: {stages}}: Rule,
  lot: Lot,
  unit: Unit,
  lots: ReadonlyMap<string, Lot>,
): Instant {
  if (task === 'move-pupae' && unit.type === 'cage') return restsSince(lot);
  if (task === 'feed' || task === 'give-water') return since(lot, eats, lots);
  if (stages === undefined) return lot.startedAt;
  return since(lot, stage => stages.some(named => isStage(stage, named)), lots);
}

/** One job for each task of a unit: of the rules its lots bring along, the most demanding. */
function unitJobs(wanting: readonly Wanting[], {input, clock, ledger}: Setting): Job[] {
  const occupied = occupiedSince(input.state.lots.values());
  const together = grouped(wanting, ({rule, unit}) => `${rule.task} ${unit.code}`);
  return [...together.values()].map(alike => {
    const {rule, unit, lot: demanding} = alike.reduce((a, b) => (limitOf(b.rule) < limitOf(a.rule) ? b : a));
    const lots = alike.map(({lot}) => lot).sort((a, b) => compareNaturally(a.code, b.code));
    const livedIn = occupied.get(unit.code) ?? demanding.startedAt;
    const coldFrom =
      rule.task === 'check-cold' ? heldColdSince(unit.code, input.state, input.now) : undefined;
    const begins = Math.max(livedIn, coldFrom ?? livedIn);
    const deeds = ledger.ofUnit(rule.task, unit.code);
    const rest = restOf(unit, lots, clock);
    return {
      rule,
      unit,
      lots,
      deeds,
      lastDone: limit => lastIn(deeds, limit),
      windowAfter(last) {
        // Mould is kept dry.
        if (rule.task === 'moisten' && amissSince('mould', unit.code, input.state) !== undefined) return null;
        const airless = rule.task === 'check-air' ? amissSince('bubbles', unit.code, input.state) : undefined;
        if (airless !== undefined && airless === last) return airlessWindow(airless);
        return letRest(windowOf(rule, Math.max(last ?? 0, begins), demanding.code, clock), rest);
      },
    };
  });
}

/** Where the air has failed it is looked at again at once, and within the hour. Common practice, no source. */
function airlessWindow(since: Instant): Window {
  return {since, earliest: since, target: since, latest: since + MS_PER_HOUR};
}

function limitOf({every, latestDays}: Rule): number {
  return latestDays ?? ('days' in every ? every.days : every.degreeDays / 10);
}
