// The days ahead, whether something can wait, and the note to whoever takes over: pages of words.
import {line} from '../../exchange/pictures/line.ts';
import type {Binding} from '../bindings.ts';
import {headOf} from '../head.ts';
import {scrolled, scrollKeys, whereScrolled} from '../scroll.ts';
import type {Page, PlanTopic, Room, SheetOf, SheetPart, Step, View} from '../sheet.ts';

type Plan = SheetOf<'plan'>;
type Key = Binding<Plan, View, Step<Plan>>;

const titles: Readonly<Record<PlanTopic, string>> = {
  week: 'a week ahead',
  month: 'a month ahead',
  wait: 'can it wait?',
  handover: 'handover',
};

const topicKey = (stroke: string, topic: PlanTopic, short: string, says: string): Key => ({
  strokes: [stroke],
  short,
  says,
  hint: true,
  act: sheet => ({sheet: {...sheet, topic, scroll: 0}}),
});

const keys: readonly Key[] = [
  topicKey('w', 'week', 'week', 'the week ahead, with what is to be done each day'),
  topicKey('m', 'month', 'month', 'the month ahead, a line a day'),
  topicKey('f', 'wait', 'can it wait', 'what can wait until the room opens after the next closed day'),
  topicKey('h', 'handover', 'handover', 'the note to whoever takes over'),
  {
    strokes: ['t'],
    short: 'taken over',
    says: 'sign the handover note: you have read it',
    hint: true,
    disabled: ({topic}) => (topic === 'handover' ? undefined : 'h shows the handover note first'),
    act: (sheet, {facts: {desk}}) => {
      const day = desk.civil.dayOf(desk.now);
      const {by} = desk.session;
      return {
        // Its first line says who took over last.
        sheet: {...sheet, scroll: 0},
        effects: [
          {
            do: 'record',
            records: [{record: 'acknowledge', alert: `handover:${day}`, done: `taken over by ${by}`}],
            said: `Taken over by ${by}`,
            about: [],
          },
        ],
      };
    },
  },
  ...scrollKeys<Plan>(),
];

export const plan: SheetPart<Plan> = {
  title: 'what lies ahead',
  keys,
  draw: drawPlan,
  needs: ({topic}, {texts, columns}) => {
    const key = keyOf(topic, columns);
    return texts.has(key) ? [] : [{do: 'text', key, topic, columns}];
  },
};

function keyOf(topic: PlanTopic, columns: number): string {
  return `${topic} ${columns}`;
}

function drawPlan({topic, scroll}: Plan, view: View, room: Room): Page {
  const loaded = view.texts.get(keyOf(topic, view.columns));
  const lines =
    loaded === undefined
      ? [line(' This is being worked out …', 'expected')]
      : 'failed' in loaded
        ? [line(` ${loaded.failed.what}. ${loaded.failed.mend}`, 'late')]
        : loaded.value;
  const all = room.body + room.detail;
  return {
    head: `${headOf(view)} ${view.glyphs.dot} ${titles[topic]}`,
    aside: whereScrolled(lines.length, scroll, all),
    body: scrolled(lines, scroll, all),
  };
}
