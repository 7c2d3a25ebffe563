// The care list alone: built into one file, because loading many takes longer than making the list.
import {todayEntry} from './commands/entry.ts';
import {run} from './program.ts';

await run(process.argv.slice(2), {commands: [todayEntry]});
