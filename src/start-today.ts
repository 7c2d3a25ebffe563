// The care list alone: built into one script, because loading many files takes longer than making the list.
import {todayEntry} from './commands/entry.ts';
import {run} from './program.ts';

// Nobody waits for what the engine may still be compiling: all is said once it is written.
void run(process.argv.slice(2), {commands: [todayEntry]}).then(() =>
  process.stderr.write('', () => process.stdout.write('', () => process.exit())),
);
