// The terminal's second screen: entered for the program, left however the program ends.
import type {WriteStream} from 'node:tty';

export const CLEARED = '\u001b[2J\u001b[H';
const ENTER = `\u001b[?1049h${CLEARED}`;
const LEAVE = '\u001b[?1049l';

/** Status of a program ended by a signal, as shells count it. */
const SIGNALS = {SIGTERM: 143, SIGHUP: 129} as const;

/** @returns how to leave it; leaving twice does nothing */
export function enterAlternateScreen(stdout: Pick<WriteStream, 'write'>): () => void {
  let entered = true;
  const leave = () => {
    if (!entered) return;
    entered = false;
    stdout.write(LEAVE);
  };
  stdout.write(ENTER);
  // An unforeseen error prints its stack after this, on the first screen, where it can be read.
  process.on('uncaughtExceptionMonitor', leave);
  process.on('exit', leave);
  for (const [signal, status] of Object.entries(SIGNALS))
    process.on(signal, () => {
      leave();
      process.exit(status);
    });
  return leave;
}
