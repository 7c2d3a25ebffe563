// The thread that works out what takes a while, so that the screens stay quick: what somebody waits for, the last thing
// asked first; in the time between, the forecasts of all lots, each told as soon as it is known.
import {setImmediate} from 'node:timers/promises';
import {parentPort, workerData} from 'node:worker_threads';
import {MS_PER_HOUR} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {openLots} from '../records/state.ts';
import {openDesk} from '../work/desk.ts';
import {fingerprintOf, fingerprintOfRoom} from '../work/expectations.ts';
import {importFiles} from '../work/import.ts';
import {type Outlook, outlooker} from '../work/outlook.ts';
import {saidAnswer} from '../work/said-answer.ts';
import {careInput} from '../work/today.ts';
import type {Asked, ForecastsAsked, LongWorkOf, Told} from './long-work-protocol.ts';
import {textOf} from './plan/texts.ts';

type WaitedFor = Exclude<Asked, {is: 'forecasts'}>;

/** Forecasts kept for when the same is asked again: some windows of time for each lot of a room. */
const MOST_KEPT = 400;

const session = {...(workerData as LongWorkOf), warn() {}};
const kept = new Map<string, Outlook>();
const waiting: WaitedFor[] = [];
let forecasts: AsyncGenerator<void, void> | undefined;
let isWorking = false;

const tell = (told: Told) => parentPort?.postMessage(told);

parentPort?.on('message', (asked: Asked) => {
  if (asked.is === 'forecasts') forecasts = forecasting(asked);
  else waiting.push(asked);
  void work();
});

async function work(): Promise<void> {
  if (isWorking) return;
  isWorking = true;
  while (waiting.length > 0 || forecasts !== undefined) {
    const asked = waiting.pop();
    if (asked !== undefined) await answer(asked);
    else {
      const now = forecasts;
      const step = await now?.next();
      if (step?.done === true && forecasts === now) forecasts = undefined;
    }
    // Lets a newer question in.
    await setImmediate();
  }
  isWorking = false;
}

function answer(asked: WaitedFor): Promise<unknown> {
  const {number} = asked;
  return refusing(number, undefined, async () => {
    switch (asked.is) {
      case 'text': {
        const {topic, columns, glyphs} = asked;
        tell({number, is: 'text', text: await textOf(topic, await openDesk(session), glyphs, columns)});
        return;
      }
      case 'answer': {
        // What is archived is looked back on too.
        const desk = await openDesk(session, asked.question.ask === 'review' ? 'all' : 'open');
        tell({number, is: 'answer', answer: await saidAnswer(desk, asked.question)});
        return;
      }
      case 'import': {
        const [imported] = await importFiles(session, asked.logger, [asked.path]);
        tell({number, is: 'imported', imported: imported!});
        return;
      }
      case 'expectations':
        await careInput(await openDesk(session));
        tell({number, is: 'done'});
    }
  });
}

/** Stops after each lot. */
async function* forecasting({
  number,
  days,
  first,
}: ForecastsAsked & {readonly number: number}): AsyncGenerator<void, void> {
  const desk = await refusing(number, undefined, () => openDesk(session));
  if (desk !== undefined) {
    const hour = Math.floor(desk.now / MS_PER_HOUR);
    const shared = fingerprintOfRoom(desk);
    const lots = openLots(desk.state);
    const order = [...lots.filter(({code}) => code === first), ...lots.filter(({code}) => code !== first)];
    const outlookOf = outlooker(desk, lots, {sharesOn: days});
    for (const lot of order) {
      const {code} = lot;
      const print = [code, fingerprintOf(lot, shared, desk), hour, days[0], days.at(-1), days.length].join(
        ' ',
      );
      await refusing(number, code, async () => {
        const outlook = kept.get(print) ?? (await outlookOf(lot));
        keep(print, outlook);
        tell({number, is: 'outlook', code, outlook: {...outlook, lot}});
      });
      yield;
    }
  }
  tell({number, is: 'done'});
}

/** Do the work, or tell why it is refused. */
async function refusing<Result>(
  number: number,
  code: string | undefined,
  work: () => Promise<Result>,
): Promise<Result | undefined> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const {what, where, mend} = error;
    tell({number, is: 'refused', code, what, where, mend});
    return undefined;
  }
}

function keep(print: string, outlook: Outlook): void {
  kept.set(print, outlook);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
}
