// Holds the state of the screens: messages in, work out, answers back in. Knows nothing of how it is shown.
import type {App, Message} from './app.ts';
import type {Effect} from './sheet.ts';
import {update} from './update.ts';

export interface Loop {
  app(): App;
  send(message: Message): void;
  /** @returns how to stop listening */
  listen(changed: () => void): () => void;
}

export interface Surroundings {
  /** Does work; its answer is a message. */
  perform(effect: Effect, app: App): Promise<Message | undefined>;
  /** Calls back after so many milliseconds. */
  after(ms: number, call: () => void): void;
  /** Something went wrong that nobody foresaw. */
  fail(error: unknown): void;
}

/** How long a change says so. */
export const MOMENT_MS = 3000;

export function startLoop(first: App, {perform, after, fail}: Surroundings): Loop {
  let app = first;
  const listeners = new Set<() => void>();

  const send = (message: Message): void => {
    const before = app;
    const {app: next, effects} = update(app, message);
    app = next;
    if (app.serial !== before.serial) {
      const {serial} = app;
      after(MOMENT_MS, () => send({is: 'moment-over', serial}));
    }
    for (const listener of listeners) listener();
    for (const effect of effects)
      perform(effect, app).then(answer => {
        if (answer !== undefined) send(answer);
      }, fail);
  };

  return {
    app: () => app,
    send,
    listen(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
}
