// The built program on a pseudo terminal: keys in, the screen as a person would see it out.
import pty from '@lydell/node-pty';
import xterm from '@xterm/headless';

export interface Screen {
  /** Type characters or escape sequences as a keyboard would. */
  press(keys: string): void;
  /** The visible rows, trimmed at the right, blank rows at the end dropped. */
  text(): string;
  /** Wait until the screen shows it; the error prints the screen. */
  waitFor(needle: string | RegExp, ms?: number): Promise<string>;
  /** Wait until the screen shows it no longer. */
  waitUntilGone(needle: string | RegExp, ms?: number): Promise<string>;
  resize(columns: number, rows: number): void;
  kill(signal?: string): void;
  isAlternate(): boolean;
  /** Every byte the program wrote, for checks on escape sequences. */
  raw(): string;
  readonly exited: Promise<{readonly exitCode: number; readonly signal?: number | undefined}>;
}

export interface ScreenOptions {
  readonly columns?: number;
  readonly rows?: number;
  readonly env?: Readonly<Record<string, string>>;
}

export const KEYS = {
  up: '\u001b[A',
  down: '\u001b[B',
  right: '\u001b[C',
  left: '\u001b[D',
  enter: '\r',
  escape: '\u001b',
  tab: '\t',
  delete: '\u007f',
} as const;

// Ink draws nothing until the end where it believes to run in CI, and a test runner's variables change libraries.
const HIDDEN =
  /^(CI|CI_.*|CONTINUOUS_INTEGRATION|BUILD_NUMBER|RUN_ID|VITEST.*|NODE_ENV|FORCE_COLOR|NO_COLOR|LC_.*|INK_.*|TENERAL_.*)$/;

const PROGRAM = new URL('../../dist/main.mjs', import.meta.url).pathname;
const PATIENCE_MS = 15_000;

export function openScreen(args: readonly string[], options: ScreenOptions = {}): Screen {
  const {columns = 80, rows = 24} = options;
  const env: Record<string, string> = {};
  for (const [name, value] of Object.entries(process.env))
    if (value !== undefined && !HIDDEN.test(name)) env[name] = value;
  const terminal = new xterm.Terminal({cols: columns, rows, allowProposedApi: true});
  const child = pty.spawn(process.execPath, [PROGRAM, ...args], {
    name: options.env?.TERM ?? 'xterm-256color',
    cols: columns,
    rows,
    env: {...env, LANG: 'C.UTF-8', TZ: 'UTC', TENERAL_BY: 'A. Keeper', ...options.env},
  });

  let raw = '';
  let drawn = Promise.resolve();
  child.onData(data => {
    raw += data;
    drawn = drawn.then(() => new Promise(resolve => terminal.write(data, resolve)));
  });
  const exited = new Promise<{exitCode: number; signal?: number | undefined}>(resolve =>
    child.onExit(resolve),
  );

  const text = (): string => {
    const buffer = terminal.buffer.active;
    const lines: string[] = [];
    for (let y = 0; y < terminal.rows; y++)
      lines.push(buffer.getLine(buffer.viewportY + y)?.translateToString(true) ?? '');
    return lines.join('\n').trimEnd();
  };

  const until = async (holds: (shown: string) => boolean, what: string, ms: number): Promise<string> => {
    const deadline = Date.now() + ms;
    for (;;) {
      await drawn;
      const shown = text();
      if (holds(shown)) return shown;
      if (Date.now() > deadline) throw new Error(`the screen ${what}; it shows:\n${shown}`);
      await new Promise(resolve => setTimeout(resolve, 15));
    }
  };
  const shows = (needle: string | RegExp) => (shown: string) =>
    typeof needle === 'string' ? shown.includes(needle) : needle.test(shown);

  return {
    press: keys => child.write(keys),
    text,
    waitFor: (needle, ms = PATIENCE_MS) => until(shows(needle), `never showed ${needle}`, ms),
    waitUntilGone: (needle, ms = PATIENCE_MS) =>
      until(shown => !shows(needle)(shown), `kept showing ${needle}`, ms),
    resize(nextColumns, nextRows) {
      terminal.resize(nextColumns, nextRows);
      child.resize(nextColumns, nextRows);
    },
    kill: signal => child.kill(signal),
    isAlternate: () => terminal.buffer.active.type === 'alternate',
    raw: () => raw,
    exited,
  };
}
