// Care rules read, tried, changed and switched off.
import {type RuleTrial, type RuleUse, ruleOf, ruleUses, triedRule} from '../care/rule-use.ts';
import {allStartRules} from '../care/start-rules.ts';
import {isFinishing} from '../care/subjects.ts';
import {MS_PER_DAY} from '../records/entry.ts';
import {nearest} from '../records/nearest.ts';
import {Refusal} from '../records/refusal.ts';
import {parseRecord} from '../records/schema/index.ts';
import type {Rule} from '../records/state.ts';
import type {Desk} from './desk.ts';
import {openDesk} from './desk.ts';
import {type Recorded, record} from './record.ts';
import type {Session} from './session.ts';
import {careInput} from './today.ts';

/** Fields of a rule that are given; others stay as they are. Null takes a field away. */
export type RuleChange = {readonly [Field in keyof Omit<Rule, 'code'>]?: Rule[Field] | null | undefined};

export interface RulesAsked {
  /** Only what holds for this lot. */
  readonly lot?: string | undefined;
  /** Only this task. */
  readonly task?: string | undefined;
  /** Also those that hold for no living lot. */
  readonly all?: boolean;
}

/** @throws Refusal for a code that is no lot */
export async function rules(desk: Desk, {lot, task, all = false}: RulesAsked): Promise<RuleUse[]> {
  if (lot !== undefined && !desk.state.lots.has(lot))
    throw new Refusal(`there is no lot "${lot}"`, '--lot', 'teneral list lots shows the lots there are.');
  const uses = ruleUses(await careInput(desk));
  return uses.filter(
    ({rule, lots, origin}) =>
      (task === undefined || rule.task === task) &&
      (lot === undefined
        ? all || task !== undefined || origin !== 'start value' || (lots.length > 0 && !isFinishing(rule))
        : lots.includes(lot) && (all || !isFinishing(rule))),
  );
}

/** @throws Refusal for a code that is no rule */
export async function ruleUse(desk: Desk, code: string): Promise<RuleUse> {
  const uses = ruleUses(await careInput(desk));
  const use = uses.find(({rule}) => rule.code === code);
  if (use === undefined) throw unknownRule(code, desk);
  return use;
}

/**
 * What a rule, perhaps changed, would have asked for in the last days.
 * @param code an existing rule, or a new one where the change gives task and interval
 */
export async function tryRule(
  desk: Desk,
  code: string,
  change: RuleChange,
  days: number,
): Promise<RuleTrial[]> {
  const input = await careInput(desk);
  const rule = parseRecord(changed(code, change, desk), '');
  if (rule.record !== 'rule') throw new TypeError('not a rule');
  return triedRule(rule, input, desk.now - days * MS_PER_DAY);
}

/** Write a rule, or a change to one: what is not given stays as it is in the rule of this code. */
export async function writeRule(
  session: Session,
  code: string,
  change: RuleChange,
  more: object = {},
): Promise<Recorded> {
  return record(session, [{...changed(code, change, await openDesk(session)), ...more}]);
}

function changed(code: string, change: RuleChange, desk: Desk): Record<string, unknown> {
  const before = ruleOf(code, desk);
  if (before === undefined && (change.task === undefined || change.every === undefined))
    throw new Refusal(
      `there is no rule "${code}" yet`,
      code,
      `A new one needs its task and how often: teneral rule ${code} feed --every 2. teneral rules --all shows those there are.`,
    );
  const given = Object.fromEntries(Object.entries(change).filter(([, value]) => value !== undefined));
  const all = Object.entries({...before, ...given}).filter(([, value]) => value !== null);
  return {...Object.fromEntries(all), record: 'rule', code};
}

function unknownRule(code: string, {state}: Desk): Refusal {
  const close = nearest(code, [...state.rules.keys(), ...allStartRules.map(rule => rule.code)]);
  return new Refusal(
    `there is no rule "${code}"`,
    '',
    close === undefined ? 'teneral rules --all shows those there are.' : `Did you mean ${close}?`,
  );
}
