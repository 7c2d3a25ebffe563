// Opens the screens on the terminal and keeps them until the person leaves.
import {render} from 'ink';
import {glyphsFor} from '../exchange/pictures/glyphs.ts';
import {Refusal} from '../records/refusal.ts';
import type {Session} from '../work/session.ts';
import {watchDesk} from '../work/watch.ts';
import {enterAlternateScreen} from './alternate-screen.ts';
import {firstApp} from './app.ts';
import {withScrollbackKept} from './kept-scrollback.ts';
import {startLongWork} from './long-work.ts';
import {startLoop} from './loop.ts';
import {perform, readFacts} from './perform.ts';
import {Screens} from './screens.tsx';

/** Time goes on: what is late, and how late, is worked out again this often. */
const CLOCK_MS = 60_000;

/** The first forecasts of a day take a while; nobody should wonder. */
const READING = 'The room is being read, and what is due worked out …';
const CLEAR_LINE = '\r\u001b[2K';

/** @throws Refusal where the room cannot be opened; nothing is drawn then */
export async function openOnTerminal(session: Session): Promise<void> {
  const {stdout, env} = process;
  stdout.write(READING);
  const facts = await readFacts(session).finally(() => stdout.write(CLEAR_LINE));
  const plain = env.INK_SCREEN_READER === 'true' || env.TENERAL_PLAIN === '1';
  const terminal = {columns: stdout.columns, rows: stdout.rows, glyphs: glyphsFor(env), plain};

  const leave = enterAlternateScreen(stdout);
  let failed: {readonly error: unknown} | undefined;
  let unmount = () => {};
  const fail = (error: unknown) => {
    failed ??= {error};
    unmount();
  };
  // What is said beside an answer would be drawn over by the screens, and spoil them.
  const quiet = {...session, warn() {}};
  const longWork = startLongWork(quiet, fail);
  const loop = startLoop(firstApp(facts, terminal), {
    perform: (effect, app) =>
      perform(effect, app.facts, {
        session: quiet,
        longWork,
        glyphs: app.glyphs,
        send: message => loop.send(message),
      }),
    after: (ms, call) => setTimeout(call, ms).unref(),
    fail,
  });
  const reread = () =>
    longWork
      .expectations()
      .then(() => readFacts(quiet))
      .then(
        fresh => loop.send({is: 'facts', facts: fresh}),
        error => (error instanceof Refusal ? loop.send({is: 'refused', refusal: error}) : fail(error)),
      );
  const stopWatching = watchDesk(facts.desk, reread);
  const clock = setInterval(reread, CLOCK_MS);
  const screens = render(<Screens loop={loop} />, {
    stdout: withScrollbackKept(stdout),
    exitOnCtrlC: false,
    isScreenReaderEnabled: plain,
  });
  unmount = screens.unmount;
  loop.listen(() => {
    if (loop.app().quit) screens.unmount();
  });
  try {
    await screens.waitUntilExit();
  } finally {
    clearInterval(clock);
    stopWatching();
    longWork.stop();
    leave();
  }
  if (failed !== undefined) throw failed.error;
}
