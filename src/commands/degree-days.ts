import type {Command} from './command.ts';

export declare const command: Command;
