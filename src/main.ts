#!/usr/bin/env node
// Starts the program: the care list from a file of its own, everything else from the parts it needs.
import {commandName} from './commands/name.ts';

if (commandName(process.argv.slice(2)) === 'today') await import('./start-today.ts');
else await import('./start.ts');
