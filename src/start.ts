// The whole program, each of its parts loaded when it is asked for.
import {commands} from './commands/index.ts';
import {run} from './program.ts';

await run(process.argv.slice(2), {
  commands,
  async plain(invocation) {
    const {openScreens} = await import('./commands/screens.ts');
    await openScreens(invocation);
  },
});
