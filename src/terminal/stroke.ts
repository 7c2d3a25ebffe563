// One key: to the question that waits, else to the sheet on top, else to the keys that work everywhere.
import {type App, type Next, saying, topOf, withTop} from './app.ts';
import {giveAnswer, typeText} from './ask/answering.ts';
import {type AskingAnswers, type AskingChoice, type AskingText, seenOf} from './ask/asking.ts';
import {recorded} from './ask/recorded.ts';
import {press} from './bindings.ts';
import {emergenceSheet} from './emergence/form.ts';
import {everywhere} from './keys/everywhere.ts';
import {layoutOf} from './layout.ts';
import {withPart} from './parts.ts';
import type {Effect, FinishGroup, Sheet, Step} from './sheet.ts';
import type {Stroke} from './strokes.ts';

export function stroke(app: App, key: Stroke): Next {
  const heard: App = app.said?.kind === 'refused' ? {...app, said: undefined} : app;
  if (layoutOf(app.columns, app.rows).kind === 'small') return small(heard, key);
  if (key !== 'ctrl-c' && heard.asking !== undefined)
    switch (heard.asking.kind) {
      case 'text':
        return toText(heard, heard.asking, key);
      case 'answers':
        return toAnswers(heard, heard.asking, key);
      case 'choice':
        return toChoice(heard, heard.asking, key);
    }
  return toSheet(heard, key);
}

/** In a window too small for pages only leaving works. */
function small(app: App, key: Stroke): Next {
  return {app, effects: key === 'q' || key === 'ctrl-c' ? [{do: 'quit'}] : []};
}

function toSheet(app: App, key: Stroke): Next {
  const top = topOf(app);
  const outcome = withPart(
    top,
    (part, sheet): {readonly step: Step} | {readonly reason: string} | undefined => {
      const typed = key === 'ctrl-c' ? undefined : part.type?.(sheet, key, app);
      return typed === undefined ? press(part.keys, key, sheet, app) : {step: typed};
    },
  );
  const known = outcome ?? press(everywhere, key, top, app);
  if (known === undefined)
    return {
      app: saying(app, `${key === ' ' ? 'space' : key} does nothing here; ? lists all keys`, 'refused'),
      effects: [],
    };
  if ('reason' in known) return {app: saying(app, sentence(known.reason), 'refused'), effects: []};
  return stepped(app, known.step);
}

function toText(app: App, asking: AskingText, key: Stroke): Next {
  const answered = typeText(asking, key);
  if (answered.kind === 'given-up') return {app: {...app, asking: undefined}, effects: []};
  if (answered.kind === 'asking') return kept(app, answered);
  const {purpose, text} = answered.asking;
  const open = {...app, asking: undefined};
  if (purpose.for !== 'field') return stepped(open, recorded(purpose, text, open));
  return {
    app: withTop(
      open,
      withPart(topOf(open), (part, sheet): Sheet => part.filled?.(sheet, purpose.field, text) ?? sheet),
    ),
    effects: [],
  };
}

function toAnswers(app: App, asking: AskingAnswers, key: Stroke): Next {
  const answered = giveAnswer(asking, key);
  if (answered.kind === 'given-up') return {app: {...app, asking: undefined}, effects: []};
  if (answered.kind === 'asking') return kept(app, answered);
  const {groups, answers} = answered.asking;
  const open = {...app, asking: undefined};
  const top = withPart(topOf(open), (part, sheet): Sheet => part.finished?.(sheet, open) ?? sheet);
  const finish = groups.map((group, i) => ({ids: group.ids, seen: seenOf(group, answers[i]!)}));
  const next = withTop(open, top);
  const lot = lotWithAdults(finish, app);
  return {
    app: lot === undefined ? next : {...next, sheets: [...next.sheets, emergenceSheet(lot)]},
    effects: [{do: 'finish', groups: finish}],
  };
}

function toChoice(app: App, asking: AskingChoice, key: Stroke): Next {
  const open = {...app, asking: undefined, said: undefined};
  if (key === 'escape') return {app: open, effects: []};
  const choice = asking.choices.find(({key: own}) => own === key.toLowerCase());
  if (choice === undefined) {
    const keys = asking.choices.map(({key: own, word}) => `${own} for ${word}`).join(', ');
    return {app: saying(app, `Answer ${keys}.`, 'refused'), effects: []};
  }
  return stepped(
    open,
    withPart(topOf(open), (part, sheet): Step => part.chosen?.(sheet, choice.key, open) ?? {}),
  );
}

/** Adults were seen: the form in which they are written down follows. */
function lotWithAdults(groups: readonly FinishGroup[], {facts: {today}}: App): string | undefined {
  const seen = groups.find(({seen}) => typeof seen.adults === 'number' && seen.adults > 0);
  return today.tasks.find(({id, lot}) => lot !== null && seen?.ids.includes(id))?.lot ?? undefined;
}

function kept(
  app: App,
  {asking, say}: {readonly asking: AskingText | AskingAnswers; readonly say?: string},
): Next {
  return {app: say === undefined ? {...app, asking} : saying(app, say, 'refused', asking), effects: []};
}

function stepped(app: App, step: Step): Next {
  const effects: Effect[] = [...(step.effects ?? [])];
  let next = step.sheet === undefined ? app : withTop(app, step.sheet);
  if (step.back === true && next.sheets.length > 1) next = withTop(next, undefined);
  if (step.home !== undefined) next = {...next, sheets: [step.home]};
  if (step.open !== undefined) next = {...next, sheets: [...next.sheets, step.open]};
  if (step.ask !== undefined) next = {...next, asking: step.ask};
  if (step.say !== undefined) next = saying(next, step.say, 'refused');
  if (step.press !== undefined) {
    const pressed = toSheet(next, step.press);
    return {app: pressed.app, effects: [...effects, ...pressed.effects]};
  }
  return {app: next, effects};
}

function sentence(text: string): string {
  return `${text[0]!.toUpperCase()}${text.slice(1)}.`;
}
