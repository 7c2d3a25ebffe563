// What a message makes of the state of the screens, and the work it asks for. Pure.

import {faultInWords} from '../records/refusal.ts';
import {Doubt} from '../work/doubts.ts';
import {type App, type Message, type Next, nameOfEffect, saying, topOf, withTop} from './app.ts';
import {WHAT_IS_IT} from './ask/what-is-it.ts';
import {withPart} from './parts.ts';
import type {Effect, Facts, Outlooks} from './sheet.ts';
import {stroke} from './stroke.ts';

export function update(app: App, message: Message): Next {
  const {app: next, effects} = happened(app, message);
  // What the sheet on top needs and nobody fetches yet.
  const needed = withPart(topOf(next), (part, sheet) => part.needs?.(sheet, next) ?? []);
  return started(next, [...effects, ...needed]);
}

function happened(app: App, message: Message): Next {
  if (message.asOf !== undefined && !isSameRoom(message.asOf, app.facts)) return only(app);
  switch (message.is) {
    case 'stroke':
      return stroke(app, message.stroke);
    case 'size':
      return only({...app, columns: message.columns, rows: message.rows});
    case 'facts':
      return only(refreshed(app, message));
    case 'written':
      return only(written(app, message));
    case 'refused': {
      const {refusal} = message;
      const next = refusal instanceof Doubt ? doubted(app) : app;
      if (refusal instanceof Doubt && refusal.isStranger)
        return only(saying({...next, busy: without(app.busy, 'act')}, refusal.what, 'refused', WHAT_IS_IT));
      return only(saying({...next, busy: without(app.busy, 'act')}, faultInWords(refusal), 'refused'));
    }
    case 'outlook':
      return only({...app, outlooks: withOutlook(app.outlooks, message)});
    case 'outlooks-told':
      return only({
        ...app,
        outlooks: {...app.outlooks, of: message.of},
        busy: without(app.busy, `outlooks ${message.of}`),
      });
    case 'course':
      return only({
        ...app,
        courses: new Map([...app.courses, [message.key, message.course]]),
        busy: without(app.busy, `course ${message.key}`),
      });
    case 'library':
      return only({...app, library: message.library, busy: without(app.busy, 'library')});
    case 'fit':
      return only({
        ...app,
        fits: new Map([...app.fits, [message.key, message.fit]]),
        busy: without(app.busy, `fit ${message.key}`),
      });
    case 'doubts':
      return only({
        ...app,
        doubts: new Map([...app.doubts, [message.logger, message.doubts]]),
        busy: without(app.busy, `doubts ${message.logger}`),
      });
    case 'text':
      return only({
        ...app,
        texts: new Map([...app.texts, [message.key, message.text]]),
        busy: without(app.busy, `text ${message.key}`),
      });
    case 'rules':
      return only({...app, rules: message.rules, busy: without(app.busy, 'rules')});
    case 'tree':
      return only({
        ...app,
        trees: new Map([...app.trees, [message.key, message.tree]]),
        busy: without(app.busy, `tree ${message.key}`),
      });
    case 'whole':
      return only({...app, whole: message.whole, busy: without(app.busy, 'whole')});
    case 'answer':
      return only({
        ...app,
        answers: new Map([...app.answers, [message.key, message.answer]]),
        busy: without(app.busy, `answer ${message.key}`),
      });
    case 'choices':
      return only({
        ...app,
        choices: new Map([...app.choices, [message.key, message.choices]]),
        busy: without(app.busy, `choices ${message.key}`),
      });
    case 'moment-over':
      return only(message.serial === app.serial ? {...app, said: keepRefused(app), lately: new Map()} : app);
  }
}

/** The room as it is now; what was computed from the room before is computed again when it is looked at. */
function refreshed(app: App, {facts}: Pick<Extract<Message, {is: 'facts'}>, 'facts'>): App {
  if (isSameRoom(facts, app.facts)) return {...app, facts};
  const outlooks = {...app.outlooks, of: undefined, failed: undefined};
  return {
    ...app,
    facts,
    outlooks,
    courses: new Map(),
    trees: new Map(),
    choices: new Map(),
    library: undefined,
    fits: new Map(),
    texts: new Map(),
    rules: undefined,
    doubts: new Map(),
    answers: new Map(),
    busy: new Set(),
  };
}

/** Only time went on from one to the other: what was worked out holds still. */
function isSameRoom(one: Facts, other: Facts): boolean {
  return one.desk.room.revision === other.desk.room.revision && one.today.day === other.today.day;
}

/** The form on top may be confirmed now. */
function doubted(app: App): App {
  const top = topOf(app);
  return top.kind === 'form' || top.kind === 'emergence' || top.kind === 'fit'
    ? withTop(app, {...top, doubted: true})
    : app;
}

function written(app: App, {facts, said, lately, saves, closes}: Extract<Message, {is: 'written'}>): App {
  const next = saying({...refreshed(app, {facts}), busy: without(app.busy, 'act')}, said, 'good');
  const top = topOf(next);
  if (closes === true && top.kind === 'form') return {...withTop(next, undefined), lately};
  const form = saves !== undefined && top.kind === 'emergence' ? withTop(next, {...top, saved: saves}) : next;
  return {...form, lately};
}

function withOutlook(
  outlooks: Outlooks,
  {code, outlook}: Pick<Extract<Message, {is: 'outlook'}>, 'code' | 'outlook'>,
): Outlooks {
  if (code !== undefined) return {...outlooks, byLot: new Map([...outlooks.byLot, [code, outlook]])};
  return 'failed' in outlook ? {...outlooks, failed: outlook.failed} : outlooks;
}

function keepRefused({said}: App): App['said'] {
  return said?.kind === 'refused' ? said : undefined;
}

/** Work that is not yet being done, marked as begun; one act at a time. */
function started(app: App, wanted: readonly Effect[]): Next {
  const busy = new Set(app.busy);
  const effects: Effect[] = [];
  let held = false;
  for (const effect of wanted) {
    const name = nameOfEffect(effect);
    if (busy.has(name) && effect.do !== 'quit') {
      held ||= name === 'act';
      continue;
    }
    busy.add(name);
    effects.push(effect);
  }
  const next = {...app, busy, quit: app.quit || effects.some(effect => effect.do === 'quit')};
  return {
    app: held
      ? saying(next, 'The last act is still being written; press again in a moment.', 'refused')
      : next,
    effects,
  };
}

function only(app: App): Next {
  return {app, effects: []};
}

function without(names: ReadonlySet<string>, name: string): ReadonlySet<string> {
  return new Set([...names].filter(one => one !== name));
}
