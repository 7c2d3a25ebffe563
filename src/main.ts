#!/usr/bin/env node
// Starts the program: the care list from a script of its own, everything else from the parts it needs.
import {join} from 'node:path';
import {commandName} from './commands/name.ts';
import {runCompiled} from './compiled.ts';

if (commandName(process.argv.slice(2)) === 'today') runCompiled(join(import.meta.dirname, 'today.cjs'));
else await import('./start.ts');
