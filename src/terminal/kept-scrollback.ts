// Ink clears a window that became smaller together with what scrolled out above it: lines that are not ours to lose.
import type {WriteStream} from 'node:tty';

const CLEAR_SCROLLBACK = '\u001b[3J';

/** The same terminal, whose scrollback stays whatever is written. */
export function withScrollbackKept(stdout: WriteStream): WriteStream {
  const write: WriteStream['write'] = (chunk: string | Uint8Array, ...rest: unknown[]) => {
    const kept = typeof chunk === 'string' ? chunk.replaceAll(CLEAR_SCROLLBACK, '') : chunk;
    return Reflect.apply(stdout.write, stdout, [kept, ...rest]);
  };
  return new Proxy(stdout, {
    get(target, name) {
      if (name === 'write') return write;
      const value: unknown = Reflect.get(target, name, target);
      return typeof value === 'function' ? value.bind(target) : value;
    },
  });
}
