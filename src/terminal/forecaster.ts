// Asks the forecasting thread. It is begun when the first forecast is wanted.
import {Worker} from 'node:worker_threads';
import {Refusal} from '../records/refusal.ts';
import type {Session} from '../work/session.ts';
import type {ForecastAsked, ForecasterOf, ForecastTold} from './forecaster-protocol.ts';
import type {LotOutlook} from './sheet.ts';

export interface Forecaster {
  /**
   * Forecast every open lot.
   * @param told hears of each lot; of no lot (undefined) where the room cannot be opened
   * @returns when all are told, or a newer question was asked
   */
  ask(
    question: Omit<ForecastAsked, 'number'>,
    told: (code: string | undefined, outlook: LotOutlook) => void,
  ): Promise<void>;
  stop(): void;
}

interface Waiting {
  readonly number: number;
  told(message: ForecastTold): void;
  end(): void;
}

/** Built beside the program. */
const THREAD = new URL('./forecaster-thread.mjs', import.meta.url);

export function startForecaster({dir, by, now}: Session, fail: (error: unknown) => void): Forecaster {
  let worker: Worker | undefined;
  let waiting: Waiting | undefined;
  let number = 0;

  const thread = (): Worker => {
    if (worker !== undefined) return worker;
    const of: ForecasterOf = {dir, by, now};
    worker = new Worker(THREAD, {workerData: of});
    worker.unref();
    worker.on('error', fail);
    worker.on('message', (message: ForecastTold) => {
      if (message.number === waiting?.number) waiting.told(message);
    });
    return worker;
  };

  return {
    ask({days, first}, told) {
      waiting?.end();
      number++;
      return new Promise(resolve => {
        const own = number;
        waiting = {
          number: own,
          end: resolve,
          told(message) {
            if (message.is === 'outlook') told(message.code, {days, outlook: message.outlook});
            else if (message.is === 'refused')
              told(message.code, {failed: new Refusal(message.what, message.where, message.mend)});
            else resolve();
          },
        };
        thread().postMessage({number: own, days, first} satisfies ForecastAsked);
      });
    },
    stop: () => void worker?.terminate(),
  };
}
