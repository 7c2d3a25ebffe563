// The work that the screens ask for, done by work/; every answer comes back as a message.

import {homedir} from 'node:os';
import {type Glyphs, UNICODE} from '../exchange/pictures/glyphs.ts';
import {sentenceOf} from '../records/daybook.ts';
import {Refusal} from '../records/refusal.ts';
import {finish, skip} from '../work/care-acts.ts';
import {choicesFor} from '../work/choice.ts';
import {correct} from '../work/correct.ts';
import {openDesk} from '../work/desk.ts';
import {finderOf} from '../work/find.ts';
import {fitting, keepFitting} from '../work/fitting.ts';
import {hintsAfter} from '../work/hints.ts';
import {library} from '../work/library.ts';
import {unlessUnsuited} from '../work/lodging-asked.ts';
import {recentDoubts} from '../work/logger-readings.ts';
import {record} from '../work/record.ts';
import {rules} from '../work/rules.ts';
import type {Session} from '../work/session.ts';
import {today} from '../work/today.ts';
import {downTree, traceOf, upTree} from '../work/trace.ts';
import {undo} from '../work/undo.ts';
import {unitCourse} from '../work/unit-course.ts';
import type {Message} from './app.ts';
import type {LongWork} from './long-work.ts';
import {writeLabels, writeRoom} from './out/write-out.ts';
import type {Effect, Facts, Loaded} from './sheet.ts';

/** The room as it is now. @throws Refusal where it cannot be opened */
export async function readFacts(session: Session): Promise<Facts> {
  const desk = await openDesk(session);
  return {desk, today: await today(desk)};
}

/** What work is done with. */
export interface Means {
  readonly session: Session;
  readonly longWork: LongWork;
  /** What pictures are drawn with; Unicode where not given. */
  readonly glyphs?: Glyphs;
  /** For answers that come in parts. */
  send(message: Message): void;
}

/** @param facts what the screens showed when the work was asked for */
export async function perform(effect: Effect, facts: Facts, means: Means): Promise<Message | undefined> {
  const answer = await answered(effect, facts, means);
  // What was written or refused holds, however the room has changed meanwhile.
  return answer === undefined || answer.is === 'written' || answer.is === 'refused'
    ? answer
    : {...answer, asOf: facts};
}

async function answered(
  effect: Effect,
  facts: Facts,
  {session, longWork, glyphs = UNICODE, send}: Means,
): Promise<Message | undefined> {
  switch (effect.do) {
    case 'quit':
      return undefined;
    case 'outlooks':
      await longWork.forecasts(effect, (code, outlook) => send({is: 'outlook', code, outlook, asOf: facts}));
      return {is: 'outlooks-told', of: effect.of};
    case 'course':
      return {
        is: 'course',
        key: effect.key,
        course: await loaded(() => unitCourse(facts.desk, effect.unit, effect.fromDays, effect.toDays)),
      };
    case 'doubts':
      return {
        is: 'doubts',
        logger: effect.logger,
        doubts: await loaded(() => recentDoubts(facts.desk, effect.logger)),
      };
    case 'text': {
      const {key, topic, columns} = effect;
      return {is: 'text', key, text: await loaded(() => longWork.text({topic, columns, glyphs}))};
    }
    case 'rules':
      return {is: 'rules', rules: await loaded(() => rules(facts.desk, {}))};
    case 'tree':
      return {is: 'tree', key: effect.key, tree: await loaded(() => treeOf(effect, session))};
    case 'library':
      return {is: 'library', library: await loaded(() => library(facts.desk))};
    case 'fit':
      return {is: 'fit', key: effect.key, fit: await loaded(() => fitting(session, effect.of))};
    case 'whole': {
      const desk = await openDesk(session, 'all');
      return {is: 'whole', whole: {revision: desk.room.revision, desk, finder: finderOf(desk)}};
    }
    case 'answer':
      return {
        is: 'answer',
        key: effect.key,
        answer: await loaded(() => longWork.answer(effect.question)),
      };
    case 'choices':
      return {
        is: 'choices',
        key: effect.key,
        choices: await loaded(() => choicesFor(effect.clues, facts.desk.state)),
      };
    default:
      return act(effect, session, longWork);
  }
}

type Act = Exclude<
  Effect,
  {
    do:
      | 'quit'
      | 'outlooks'
      | 'course'
      | 'text'
      | 'rules'
      | 'tree'
      | 'whole'
      | 'choices'
      | 'doubts'
      | 'library'
      | 'fit'
      | 'answer';
  }
>;

async function act(effect: Act, session: Session, longWork: LongWork): Promise<Message> {
  try {
    const {lately, ...rest} = await acted(effect, session, longWork);
    // After new readings every lot is forecast anew.
    if (effect.do === 'import') await longWork.expectations();
    return {is: 'written', facts: await readFacts(session), lately: new Map(lately), ...rest};
  } catch (error) {
    if (error instanceof Refusal) return {is: 'refused', refusal: error};
    throw error;
  }
}

interface Acted {
  readonly said: string;
  readonly lately: readonly (readonly [id: string, text: string])[];
  readonly saves?: readonly string[] | undefined;
  /** The form on top goes away. */
  readonly closes?: boolean | undefined;
}

async function acted(effect: Act, session: Session, longWork: LongWork): Promise<Acted> {
  switch (effect.do) {
    case 'finish': {
      const hints: string[] = [];
      for (const {ids, seen} of effect.groups) {
        const pairs = Object.entries(seen).map(([key, answer]) => `${key}=${answer}`);
        hints.push(...(await finish(session, ids, pairs)).stillToRecord);
      }
      const ids = effect.groups.flatMap(group => group.ids);
      const done =
        ids.length === 1 ? 'Done. u takes it back.' : `${ids.length} tasks done. u takes the last kind back.`;
      return {said: [done, ...hints].join(' '), lately: ids.map(id => [id, 'done'])};
    }
    case 'skip':
      await skip(session, effect.ids, effect.why);
      return {
        said: `Could not be done: ${effect.why}.`,
        lately: effect.ids.map(id => [id, `could not be done: ${effect.why}`]),
      };
    case 'import': {
      const path = effect.path.replace(/^~(?=\/)/, homedir());
      const file = await longWork.import(effect.logger, path);
      const {rows, added, duplicates, rejected, understood, doubts, changedWords} = file;
      const said = `${added} of ${rows} rows added, ${duplicates} known already, ${rejected.length} rejected; read as ${understood}`;
      return {said: [said, ...doubts, ...changedWords].join('. '), lately: []};
    }
    case 'undo': {
      const {voided} = await undo(session);
      return {said: `Taken back: ${voided.map(({record}) => sentenceOf(record)).join('; ')}.`, lately: []};
    }
    case 'record': {
      const unless = unlessUnsuited(session, effect.records);
      const {written, desk} = await record(session, effect.records, undefined, unless);
      const hints = (await hintsAfter(written, desk)).map(
        hint => `${hint[0]!.toUpperCase()}${hint.slice(1)}.`,
      );
      return {
        said: [`${effect.said}. u takes it back.`, ...hints].join(' '),
        lately: effect.about.map(id => [id, effect.said]),
        saves: effect.saves,
        closes: effect.closes,
      };
    }
    case 'keep-fit': {
      const {profile, stages, doubts} = await keepFitting(session, effect.of, effect.kept);
      const said = stages.map(({stage, rate}) => `${stage} as ${rate.kind}`).join(', ');
      const asked = doubts.map(({field, why}) => ` Look at ${field}: ${why}.`);
      return {said: `Kept in ${profile}: ${said}. u takes it back.${asked.join('')}`, lately: []};
    }
    case 'labels':
      return {said: await writeLabels(session, effect), lately: [[effect.code, 'labelled']]};
    case 'export':
      return {said: await writeRoom(session, effect.to), lately: []};
    case 'correct': {
      await correct(session, effect);
      return {said: `${effect.said}. u takes it back.`, lately: [], closes: true};
    }
  }
}

/** What is archived belongs to a trace too. */
async function treeOf({code, way}: Extract<Effect, {do: 'tree'}>, session: Session) {
  const desk = await openDesk(session, 'all');
  const node = traceOf(desk, code);
  return way === 'down' ? downTree(node, desk) : upTree(node, desk);
}

async function loaded<Value>(work: () => Promise<Value>): Promise<Loaded<Value>> {
  try {
    return {value: await work()};
  } catch (error) {
    if (error instanceof Refusal) return {failed: error};
    throw error;
  }
}
