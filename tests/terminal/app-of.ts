// The screens' state on a small real room, driven by keys without a terminal.
import {UNICODE} from '../../src/exchange/pictures/glyphs.ts';
import {textOfLines} from '../../src/exchange/pictures/line.ts';
import {type App, firstApp, type Message} from '../../src/terminal/app.ts';
import {windowLines} from '../../src/terminal/draw.ts';
import type {LongWork} from '../../src/terminal/long-work.ts';
import {readFacts} from '../../src/terminal/perform.ts';
import type {Effect} from '../../src/terminal/sheet.ts';
import {update} from '../../src/terminal/update.ts';
import {newRoom, write} from '../room/rooms.ts';

/** Friday in Vienna. */
export const NOW = '2026-06-12T08:40';

/** A cage with larvae, an emergence box with galls, an aquarium with nymphs; begun on Tuesday, not tended since. */
export const SMALL_ROOM = [
  {record: 'logger', code: 'L1', kind: 'hand'},
  {record: 'unit', code: 'C1', type: 'cage', place: 'rack A/1', logger: 'L1', setPoints: {constant: 22}},
  {record: 'unit', code: 'E4', type: 'emergence-box', place: 'cold room/4'},
  {record: 'unit', code: 'T1', type: 'aquarium', place: 'window bench/1'},
  {record: 'sample', code: '26-031', collected: {from: '2026-06-07'}, method: 'beating', host: 'Salix'},
  {
    record: 'lot',
    code: '26-031-A',
    sample: '26-031',
    unit: 'C1',
    at: '2026-06-09T09:00:00+02:00',
    stages: {larva: 18},
    candidates: [{profile: 'pieris-rapae'}],
  },
  {
    record: 'lot',
    code: '26-031-G',
    sample: '26-031',
    unit: 'E4',
    at: '2026-06-09T09:00:00+02:00',
    material: {what: 'galls', amount: 40, unit: 'pieces'},
  },
  {
    record: 'lot',
    code: '26-031-W',
    sample: '26-031',
    unit: 'T1',
    at: '2026-06-09T09:00:00+02:00',
    stages: {'nymph-9': 12},
  },
];

export async function roomWith(records: readonly object[]): Promise<string> {
  const dir = await newRoom();
  const written = Date.parse('2026-06-09T07:00:00Z');
  if (records.length > 0) await write(dir, records, {now: written});
  return dir;
}

/** Works out nothing: for screens that need no page of words and no forecast. */
export const NO_LONG_WORK: LongWork = {
  forecasts: async () => {},
  text: () => Promise.reject(new Error('no page of words is worked out here')),
  answer: () => Promise.reject(new Error('nothing is answered here')),
  import: () => Promise.reject(new Error('nothing is imported here')),
  expectations: async () => {},
  stop() {},
};

export interface Driven {
  app(): App;
  /** The window as text. */
  shown(): string;
  send(message: Message): readonly Effect[];
  /** Press keys: names in angle brackets, else characters: `<down> `. Answers the work of the last one. */
  press(keys: string): readonly Effect[];
}

export async function driven(
  dir: string,
  size: {readonly columns: number; readonly rows: number} = {columns: 80, rows: 24},
  plain = false,
): Promise<Driven> {
  const facts = await readFacts({dir, now: NOW, by: 'A. Keeper', warn() {}});
  let app = firstApp(facts, {...size, glyphs: UNICODE, plain});
  const send = (message: Message) => {
    const next = update(app, message);
    app = next.app;
    return next.effects;
  };
  return {
    app: () => app,
    shown: () => textOfLines(windowLines(app)),
    send,
    press(keys) {
      let effects: readonly Effect[] = [];
      for (const [, named, letter] of keys.matchAll(/<([a-z-]+)>|([\s\S])/g))
        effects = send({is: 'stroke', stroke: named ?? letter!});
      return effects;
    },
  };
}
