// The thread that forecasts while the screens stay quick: lot by lot, each told as soon as it is known.
import {setImmediate} from 'node:timers/promises';
import {parentPort, workerData} from 'node:worker_threads';
import {MS_PER_HOUR} from '../records/entry.ts';
import {Refusal} from '../records/refusal.ts';
import {openLots} from '../records/state.ts';
import {openDesk} from '../work/desk.ts';
import {fingerprintOf, fingerprintOfRoom} from '../work/expectations.ts';
import {type Outlook, outlooker} from '../work/outlook.ts';
import type {ForecastAsked, ForecasterOf, ForecastTold} from './forecaster-protocol.ts';

/** Forecasts kept for when the same is asked again: some windows of time for each lot of a room. */
const MOST_KEPT = 400;

const session = {...(workerData as ForecasterOf), warn() {}};
const kept = new Map<string, Outlook>();
let newest = 0;

const tell = (told: ForecastTold) => parentPort?.postMessage(told);

parentPort?.on('message', (asked: ForecastAsked) => {
  newest = asked.number;
  void answer(asked);
});

async function answer({number, days, first}: ForecastAsked): Promise<void> {
  const refused = (error: unknown, code?: string) => {
    if (!(error instanceof Refusal)) throw error;
    const {what, where, mend} = error;
    tell({number, is: 'refused', code, what, where, mend});
  };
  try {
    const desk = await openDesk(session);
    const hour = Math.floor(desk.now / MS_PER_HOUR);
    const shared = fingerprintOfRoom(desk);
    const lots = openLots(desk.state);
    const order = [...lots.filter(({code}) => code === first), ...lots.filter(({code}) => code !== first)];
    const outlookOf = outlooker(desk, lots, {sharesOn: days});
    for (const lot of order) {
      // Lets a newer question in.
      await setImmediate();
      if (number !== newest) return;
      const {code} = lot;
      const print = [code, fingerprintOf(lot, shared, desk), hour, days[0], days.at(-1), days.length].join(
        ' ',
      );
      try {
        const outlook = kept.get(print) ?? (await outlookOf(lot));
        keep(print, outlook);
        tell({number, is: 'outlook', code, outlook: {...outlook, lot}});
      } catch (error) {
        refused(error, code);
      }
    }
  } catch (error) {
    refused(error);
  }
  tell({number, is: 'done'});
}

function keep(print: string, outlook: Outlook): void {
  kept.set(print, outlook);
  const [oldest] = kept.keys();
  if (kept.size > MOST_KEPT && oldest !== undefined) kept.delete(oldest);
}
