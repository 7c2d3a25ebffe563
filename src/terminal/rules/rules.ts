// The care rules: which hold for whom, what one would have asked for, changed and switched off.
import type {RuleUse} from '../../care/rule-use.ts';
import {fill} from '../../exchange/pictures/fit.ts';
import {type Line, line, piece} from '../../exchange/pictures/line.ts';
import {ruleLines, shortInterval} from '../../exchange/pictures/rules.ts';
import type {Binding} from '../bindings.ts';
import {cursorKeys} from '../cursor-keys.ts';
import {headOf} from '../head.ts';
import {firstShown} from '../layout.ts';
import type {Effect, Page, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';

type Rules = SheetOf<'rules'>;
type Key = Binding<Rules, View, Step<Rules>>;

const noRule = (sheet: Rules, view: View) =>
  current(sheet, view) === undefined ? 'no rule is under the cursor' : undefined;

const keys: readonly Key[] = [
  {
    strokes: [' '],
    short: 'off or on',
    says: 'switch the rule off, or on again',
    hint: true,
    disabled: noRule,
    act: (sheet, view) => {
      const {rule} = current(sheet, view)!;
      return change(rule, {off: !rule.off}, `${rule.code} is switched ${rule.off ? 'on' : 'off'}`);
    },
  },
  {
    strokes: ['e'],
    short: 'how often',
    says: 'change how often, in days or in warmth, and if you like how early and how late',
    hint: true,
    disabled: noRule,
    act: (sheet, view) => {
      const {rule} = current(sheet, view)!;
      return {
        ask: {
          kind: 'text',
          label: `${rule.code}: days, or 24 dd above 8; then soonest, latest`,
          text: '',
          purpose: {for: 'interval', rule},
        },
      };
    },
  },
  {
    strokes: ['a'],
    short: 'how much',
    says: 'change how much it takes: for each animal, by stage, or however many there are',
    hint: true,
    disabled: noRule,
    act: (sheet, view) => {
      const {rule} = current(sheet, view)!;
      return {
        ask: {
          kind: 'text',
          label: `${rule.code}: 2 prey each, larva-4 46 aphids each a day, or none`,
          text: '',
          purpose: {for: 'amount', rule},
        },
      };
    },
  },
  {
    strokes: ['t'],
    short: 'try',
    says: 'what it would have asked for in the last month',
    hint: true,
    disabled: noRule,
    act: (sheet, view) => ({sheet: {...sheet, tried: current(sheet, view)!.rule.code}}),
  },
  ...cursorKeys<Rules>('rule', moved),
];

export const rules: SheetPart<Rules> = {
  title: 'the care rules',
  keys,
  draw: drawRules,
  needs({tried}, {texts, columns, rules: loaded}) {
    const list: Effect[] = loaded === undefined ? [{do: 'rules'}] : [];
    if (tried === undefined || texts.has(trialKey(tried, columns))) return list;
    return [...list, {do: 'text', key: trialKey(tried, columns), topic: {rule: tried}, columns}];
  },
};

function trialKey(code: string, columns: number): string {
  return `try ${code} ${columns}`;
}

/** Those that hold for somebody, and the room's own. */
function shown({rules: loaded}: View): readonly RuleUse[] {
  return loaded === undefined || 'failed' in loaded ? [] : loaded.value;
}

function current(sheet: Rules, view: View): RuleUse | undefined {
  const all = shown(view);
  return all.find(({rule}) => rule.code === sheet.cursor) ?? all[0];
}

function moved(sheet: Rules, view: View, by: number): Step<Rules> {
  const all = shown(view);
  const here = all.findIndex(({rule}) => rule.code === current(sheet, view)?.rule.code);
  const next = all[Math.max(0, Math.min(all.length - 1, here + by))];
  return {sheet: {...sheet, cursor: next?.rule.code, tried: undefined}};
}

function drawRules(sheet: Rules, view: View, room: Room): Page {
  const all = shown(view);
  const here = current(sheet, view);
  const index = here === undefined ? -1 : all.indexOf(here);
  const first = firstShown(index, all.length, room.body);
  const rows = all
    .slice(first, first + room.body)
    .map((use, i): Line => rowLine(use, first + i === index, view, room));
  const waits =
    view.rules === undefined ? 'The rules are being looked up …' : 'No rule holds for a living lot.';
  return {
    head: `${headOf(view)} ${view.glyphs.dot} care rules`,
    aside: `${all.length} rules`,
    body: rows.length === 0 ? [line(` ${waits}`, 'expected')] : rows,
    detail: here === undefined ? [] : detailOf(here, sheet, view, room),
  };
}

function rowLine({rule, lots, origin}: RuleUse, isHere: boolean, view: View, room: Room): Line {
  const {glyphs, lately} = view;
  const kind = isHere ? 'cursor' : 'plain';
  const happened = lately.get(rule.code);
  const often = rule.off ? 'switched off' : shortInterval(rule);
  const whose = lots.length > 3 ? `${lots.length} lots` : lots.join(' ');
  const rest =
    happened ?? `${fill(often, 22, glyphs.more)} ${whose}${origin === 'start value' ? '' : ` (${origin})`}`;
  const width = Math.max(16, Math.min(32, room.columns - 50));
  return [
    piece(` ${isHere ? glyphs.cursor : ' '} ${fill(rule.code, width, glyphs.more)} `, kind),
    piece(rest, happened === undefined ? kind : 'good'),
  ];
}

function detailOf(use: RuleUse, {tried}: Rules, view: View, room: Room): readonly Line[] {
  if (tried !== use.rule.code) return ruleLines(use, room.columns);
  const loaded = view.texts.get(trialKey(tried, view.columns));
  if (loaded === undefined) return [line(' This is being worked out …', 'expected')];
  return 'failed' in loaded ? [line(` ${loaded.failed.what}`, 'late')] : loaded.value;
}

/** A change to a rule: the whole rule is written again, with what is other. */
function change(rule: RuleUse['rule'], fields: Partial<RuleUse['rule']>, said: string): Step<Rules> {
  return {
    effects: [{do: 'record', records: [{...rule, ...fields, record: 'rule'}], said, about: [rule.code]}],
  };
}
