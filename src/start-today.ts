// The care list alone: built into one script, because loading many files takes longer than making the list.
import {todayEntry} from './commands/entry.ts';
import {run} from './program.ts';

void run(process.argv.slice(2), {commands: [todayEntry]});
