// The one Ink component, on a terminal that is only pretended.
import {EventEmitter} from 'node:events';
import {render} from 'ink';
import {expect, it} from 'vitest';
import {piece} from '../../src/exchange/pictures/line.ts';
import type {Message} from '../../src/terminal/app.ts';
import type {Loop} from '../../src/terminal/loop.ts';
import {Painted} from '../../src/terminal/paint.tsx';
import {Screens} from '../../src/terminal/screens.tsx';
import {driven, roomWith, SMALL_ROOM} from './app-of.ts';

/** Collects what is written. */
class Output extends EventEmitter {
  readonly isTTY = true;
  readonly frames: string[] = [];
  columns: number;
  rows: number;
  constructor(columns: number, rows: number) {
    super();
    this.columns = columns;
    this.rows = rows;
  }
  write = (text: string) => {
    if (text !== '\n') this.frames.push(text);
    return true;
  };
}

/** A keyboard. */
class Input extends EventEmitter {
  readonly isTTY = true;
  private waiting: string | null = null;
  type(text: string) {
    this.waiting = text;
    this.emit('readable');
  }
  read = () => {
    const text = this.waiting;
    this.waiting = null;
    return text;
  };
  setRawMode() {}
  setEncoding() {}
  ref() {}
  unref() {}
}

function shown(tree: Parameters<typeof render>[0], columns: number, rows: number) {
  const stdout = new Output(columns, rows);
  const stdin = new Input();
  const ink = render(tree, {
    // Streams that only pretend: the part of them that Ink uses is all there.
    stdout: stdout as unknown as NodeJS.WriteStream,
    stdin: stdin as unknown as NodeJS.ReadStream,
    debug: true,
    exitOnCtrlC: false,
    patchConsole: false,
  });
  return {stdout, stdin, ink};
}

/** Effects of the first render have run. */
const settled = () => new Promise(resolve => setImmediate(() => setTimeout(resolve, 0)));

it('lines are painted one below the other, empty ones too', () => {
  const lines = [[piece('one'), piece(' two', 'seen')], [], [piece('three', 'expected')]];
  const {stdout, ink} = shown(<Painted lines={lines} />, 24, 10);
  expect(stdout.frames.at(-1)).toBe('one two\n\nthree');
  ink.unmount();
});

it('every key goes to the loop; a resize clears the window before anything is drawn anew', async () => {
  const screens = await driven(await roomWith(SMALL_ROOM));
  const sent: Message[] = [];
  const listeners = new Set<() => void>();
  const loop: Loop = {
    app: screens.app,
    send(message) {
      sent.push(message);
      screens.send(message);
      for (const listener of listeners) listener();
    },
    listen(changed) {
      listeners.add(changed);
      return () => listeners.delete(changed);
    },
  };
  const {stdout, stdin, ink} = shown(<Screens loop={loop} />, 80, 24);
  await settled();
  expect(stdout.frames.at(-1)).toContain('feed 18 larvae');
  stdin.type('jj');
  await settled();
  expect(sent).toEqual([
    {is: 'stroke', stroke: 'j'},
    {is: 'stroke', stroke: 'j'},
  ]);
  const before = stdout.frames.length;
  stdout.columns = 40;
  stdout.rows = 8;
  stdout.emit('resize');
  await settled();
  const after = stdout.frames.slice(before);
  expect(after.indexOf('\u001b[2J\u001b[H')).toBeGreaterThanOrEqual(0);
  expect(stdout.frames.at(-1)).toContain('Needs 60 columns and 16 rows');
  expect(stdout.frames.at(-1)?.split('\n')).toHaveLength(7);
  ink.unmount();
});
