// Asks the thread that does long work. It is begun when it is first asked something.
import {Worker} from 'node:worker_threads';
import type {Line} from '../exchange/pictures/line.ts';
import {Refusal} from '../records/refusal.ts';
import type {Imported} from '../work/import.ts';
import type {Question} from '../work/said-answer.ts';
import type {SaidLines} from '../work/said-lines.ts';
import type {Session} from '../work/session.ts';
import type {Asked, ForecastsAsked, LongWorkOf, TextAsked, Told} from './long-work-protocol.ts';
import type {LotOutlook} from './sheet.ts';

export interface LongWork {
  /**
   * Forecast every open lot.
   * @param told hears of each lot; of no lot (undefined) where the room cannot be opened
   * @returns when all are told, or a newer question for forecasts was asked
   */
  forecasts(
    asked: ForecastsAsked,
    told: (code: string | undefined, outlook: LotOutlook) => void,
  ): Promise<void>;
  /** A page of words. @throws Refusal where it cannot be worked out */
  text(asked: TextAsked): Promise<readonly Line[]>;
  /** An answer in words. @throws Refusal where it cannot be answered */
  answer(question: Question): Promise<SaidLines>;
  /** Read a logger's file into the room. @throws Refusal where it cannot be taken in */
  import(logger: string, path: string): Promise<Imported>;
  /**
   * Bring up to date what the care list needs to know of each lot, so that the list itself is quickly read.
   * @throws Refusal where the room cannot be opened
   */
  expectations(): Promise<void>;
  stop(): void;
}

/** Built beside the program. */
const THREAD = new URL('./long-work-thread.mjs', import.meta.url);

type Unnumbered<Any> = Any extends unknown ? Omit<Any, 'number'> : never;

export function startLongWork({dir, by, now}: Session, fail: (error: unknown) => void): LongWork {
  let worker: Worker | undefined;
  let number = 0;
  /** Who hears what is told to a question, by its number. */
  const listeners = new Map<number, (told: Told) => void>();
  let endForecasts = () => {};

  const thread = (): Worker => {
    if (worker !== undefined) return worker;
    const of: LongWorkOf = {dir, by, now};
    worker = new Worker(THREAD, {workerData: of});
    worker.unref();
    worker.on('error', fail);
    worker.on('message', (told: Told) => listeners.get(told.number)?.(told));
    return worker;
  };

  /** @returns how to stop listening */
  const ask = (question: Unnumbered<Asked>, told: (told: Told) => void): (() => void) => {
    number++;
    const own = number;
    listeners.set(own, told);
    thread().postMessage({...question, number: own});
    return () => void listeners.delete(own);
  };

  /** A question with one answer. */
  const asked = <Answer>(
    question: Unnumbered<Asked>,
    answerIn: (told: Told) => Answer | undefined,
  ): Promise<Answer> =>
    new Promise((resolve, reject) => {
      const stop = ask(question, told => {
        stop();
        const answer = answerIn(told);
        if (answer !== undefined) resolve(answer);
        else if (told.is === 'refused') reject(refusalOf(told));
      });
    });

  return {
    forecasts({days, first}, told) {
      endForecasts();
      return new Promise(resolve => {
        const stop = ask({is: 'forecasts', days, first}, message => {
          if (message.is === 'outlook') told(message.code, {days, outlook: message.outlook});
          else if (message.is === 'refused') told(message.code, {failed: refusalOf(message)});
          else endForecasts();
        });
        endForecasts = () => {
          stop();
          resolve();
        };
      });
    },
    text: ({topic, columns, glyphs}) =>
      asked({is: 'text', topic, columns, glyphs}, told => (told.is === 'text' ? told.text : undefined)),
    answer: question =>
      asked({is: 'answer', question}, told => (told.is === 'answer' ? told.answer : undefined)),
    import: (logger, path) =>
      asked({is: 'import', logger, path}, told => (told.is === 'imported' ? told.imported : undefined)),
    expectations: async () => {
      await asked({is: 'expectations'}, told => told.is === 'done' || undefined);
    },
    stop: () => void worker?.terminate(),
  };
}

function refusalOf({what, where, mend}: Extract<Told, {is: 'refused'}>): Refusal {
  return new Refusal(what, where, mend);
}
